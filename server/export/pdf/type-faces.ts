import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';

/** The faces that papers are set in: Latin, Greek and Cyrillic, SIL Open Font License 1.1. */
export const FACES = {
  serif: 'source-serif-4-regular.ttf',
  bold: 'source-serif-4-semibold.ttf',
  sans: 'source-sans-3-regular.ttf',
  label: 'source-sans-3-semibold.ttf',
} as const;
export type Face = keyof typeof FACES;

/** The part of a fontkit font that is used here. */
export type FaceFont = {
  unitsPerEm: number;
  hasGlyphForCodePoint: (code: number) => boolean;
  layout: (text: string) => {
    glyphs: { path: { toSVG: () => string } }[];
    positions: { xAdvance: number; xOffset: number; yOffset: number }[];
  };
};

const fonts = new Map<Face, FaceFont>();

/**
 * A face, read once: its kerning tables take longer to unpack than a page takes to set. pdfkit makes a
 * subset of its own for each file, so files don't touch each other.
 */
export function faceFont(face: Face): FaceFont {
  let font = fonts.get(face);
  if (!font) {
    const path = fileURLToPath(new URL(`../fonts/${FACES[face]}`, import.meta.url));
    font = fontkit.create(readFileSync(path)) as FaceFont;
    fonts.set(face, font);
  }
  return font;
}
