import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync('client/style/cloth.css', 'utf8');
const dyes = Object.fromEntries(
  [...css.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map((m) => [
    m[1]!,
    { light: m[2]!, dark: m[3]! },
  ]),
);

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
function contrast(a: string, b: string): number {
  const [hi, lo] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (hi! + 0.05) / (lo! + 0.05);
}

describe('dyes on their grounds', () => {
  // The formula's own end points: black on white is 21:1, a colour on itself 1:1.
  it('measures as the standard does', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  const TEXT = ['ink', 'walnut', 'indigo', 'madder', 'weld', 'moss'];
  const GROUNDS = ['linen', 'linen-shade', 'paper'];
  for (const theme of ['light', 'dark'] as const) {
    for (const ground of GROUNDS) {
      it.each(TEXT)(`%s on ${ground}, ${theme}, is at least 4.5:1`, (text) => {
        expect(contrast(dyes[text]![theme], dyes[ground]![theme])).toBeGreaterThanOrEqual(4.5);
      });
    }
    it.each([
      ['ink', 'indigo-wash'],
      ['ink', 'madder-wash'],
      ['ink', 'weld-wash'],
      ['madder', 'madder-wash'],
      ['indigo', 'indigo-wash'],
      ['on-indigo', 'indigo'],
      ['paper', 'madder'],
    ])(`%s on %s, ${theme}, is at least 4.5:1`, (text, ground) => {
      expect(contrast(dyes[text]![theme], dyes[ground]![theme])).toBeGreaterThanOrEqual(4.5);
    });
    it(`the edge of a field, ${theme}, is at least 3:1`, () => {
      expect(contrast(dyes['thread-strong']![theme], dyes.paper![theme])).toBeGreaterThanOrEqual(3);
    });
  }
});
