import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeIn, quiltCorners } from '../../client/charts/quilt-shape.ts';

const far = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

describe('the shape of the quilt', () => {
  it('is the rectangle of width and length', () => {
    expect(quiltCorners({ width: 60, length: 72 }, 1)).toEqual([
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 72 },
      { x: 0, y: 72 },
    ]);
  });

  // Euclid I.47 and the law of cosines: a quadrilateral is fixed by four sides and a diagonal.
  it('keeps every measured side and the diagonal of any convex quadrilateral', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 110, noNaN: true }),
        fc.double({ min: 40, max: 110, noNaN: true }),
        fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (w, h, d) => {
          const true4 = [
            { x: 0 + d[0]!, y: 0 + d[1]! },
            { x: w + d[2]!, y: 0 + d[3]! },
            { x: w + d[4]!, y: h + d[5]! },
            { x: 0 + d[6]!, y: h + d[7]! },
          ] as const;
          const sides = {
            top: far(true4[0], true4[1]),
            right: far(true4[1], true4[2]),
            bottom: far(true4[2], true4[3]),
            left: far(true4[3], true4[0]),
            diagonal: far(true4[0], true4[2]),
          };
          const drawn = quiltCorners(sides, w / h);
          expect(far(drawn[0], drawn[1])).toBeCloseTo(sides.top, 3);
          expect(far(drawn[1], drawn[2])).toBeCloseTo(sides.right, 3);
          expect(far(drawn[2], drawn[3])).toBeCloseTo(sides.bottom, 3);
          expect(far(drawn[3], drawn[0])).toBeCloseTo(sides.left, 3);
          expect(far(drawn[0], drawn[2])).toBeCloseTo(sides.diagonal, 3);
          expect(drawn[1].y).toBeCloseTo(0, 4);
          expect(drawn[3].y).toBeGreaterThan(0);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  it('falls back to the rectangle where the sides fit no quadrilateral', () => {
    const corners = quiltCorners({ top: 60, right: 10, bottom: 200, left: 10, diagonal: 15 }, 1);
    expect(corners[2]).toEqual({ x: 60, y: 10 });
  });

  it('puts the middle in the middle', () => {
    const corners = quiltCorners({ width: 60, length: 72 }, 1);
    expect(placeIn(corners, 0.5, 0.5)).toEqual({ x: 30, y: 36 });
  });
});
