import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The faces that papers are set in: Latin, Greek and Cyrillic, SIL Open Font License 1.1. */
export const FACES = {
  serif: 'source-serif-4-regular.ttf',
  italic: 'source-serif-4-italic.ttf',
  bold: 'source-serif-4-semibold.ttf',
  sans: 'source-sans-3-regular.ttf',
  label: 'source-sans-3-semibold.ttf',
} as const;
export type Face = keyof typeof FACES;

const files = new Map<Face, Buffer>();

/** The bytes of a face, read once. */
export function faceFile(face: Face): Buffer {
  let bytes = files.get(face);
  if (!bytes) {
    bytes = readFileSync(fileURLToPath(new URL(`../fonts/${FACES[face]}`, import.meta.url)));
    files.set(face, bytes);
  }
  return bytes;
}
