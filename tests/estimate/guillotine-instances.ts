import { readFileSync } from 'node:fs';
import { seededSequence } from '../../core/estimate/cutting/seeded-sequence.ts';

export interface Instance {
  name: string;
  width: number;
  bestLength: number;
  pieces: { width: number; length: number }[];
}

/**
 * A cloth cut up edge to edge without waste into `count` pieces: the best length is known. Cuts fall on
 * multiples of `step`, no piece is thinner than `thinnest`, and the pieces are shuffled.
 */
export const cutUpCloth = (
  seed: number,
  width: number,
  length: number,
  count: number,
  step: number,
  thinnest: number,
): Instance => {
  const draw = seededSequence(seed);
  const rectangles = [{ width, length }];
  for (let tries = 0; rectangles.length < count && tries < 10_000; tries++) {
    // A rectangle by lot, the large ones sooner.
    let lot = draw() * rectangles.reduce((sum, r) => sum + r.width * r.length, 0);
    let at = 0;
    for (; at < rectangles.length - 1; at++) {
      lot -= rectangles[at]!.width * rectangles[at]!.length;
      if (lot < 0) break;
    }
    const { width: w, length: l } = rectangles[at]!;
    const along = draw() < w / (w + l);
    const side = along ? w : l;
    if (side < 2 * thinnest) continue;
    const cut = Math.round((thinnest + draw() * (side - 2 * thinnest)) / step) * step;
    if (cut < thinnest || side - cut < thinnest) continue;
    rectangles.splice(
      at,
      1,
      along ? { width: cut, length: l } : { width: w, length: cut },
      along ? { width: w - cut, length: l } : { width: w, length: l - cut },
    );
  }
  for (let i = rectangles.length - 1; i > 0; i--) {
    const j = Math.floor(draw() * (i + 1));
    [rectangles[i], rectangles[j]] = [rectangles[j]!, rectangles[i]!];
  }
  return { name: `seed ${seed}`, width, bestLength: length, pieces: rectangles };
};

/** Cloths of several widths and grids, cut into 8 to 40 pieces. */
export const generatedInstances = (perKind: number, from = 1): Instance[] =>
  [
    { width: 40, step: 0.25, thinnest: 1.5 },
    { width: 40, step: 1, thinnest: 2 },
    { width: 100, step: 1, thinnest: 4 },
    { width: 110, step: 0.5, thinnest: 3 },
  ].flatMap(({ width, step, thinnest }, kind) =>
    Array.from({ length: perKind }, (_, i) => {
      const seed = from + i * 10 + kind;
      const draw = seededSequence(seed * 7919);
      const count = 8 + Math.floor(draw() * 33);
      const length = Math.round((25 + draw() * 60) * (width / 40));
      return cutUpCloth(seed, width, length, count, step, thinnest);
    }),
  );

interface Published {
  name: string;
  width: number;
  bestLength: number;
  pieces: [number, number][];
}

/**
 * E. Hopper's strip packing instances T1a, T2a, T4a and T5a (PhD thesis, Cardiff, 2000), as distributed in
 * 2DPackLib (University of Bologna). The areas add up to 200 x 200 exactly.
 */
export const publishedInstances = (): Instance[] =>
  (JSON.parse(readFileSync(new URL('./fixtures/hopper-t.json', import.meta.url), 'utf8')) as Published[]).map(
    ({ pieces, ...rest }) => ({ ...rest, pieces: pieces.map(([width, length]) => ({ width, length })) }),
  );
