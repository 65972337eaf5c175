import type { SidesAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { decimal, exact } from './exact.ts';
import { SpecError } from './spec-error.ts';
import type { Working } from './working.ts';

type Sides = NonNullable<EstimateSpec['sides']>;

const TOLERANCE = 0.01;

/** Angle in degrees between two sides of a triangle, `opposite` facing it (law of cosines). */
const angleBetween = (a: number, b: number, opposite: number): number =>
  (Math.acos(Math.max(-1, Math.min(1, (a * a + b * b - opposite * opposite) / (2 * a * b)))) * 180) / Math.PI;

const isTriangle = (a: number, b: number, c: number): boolean => a < b + c && b < a + c && c < a + b;

/**
 * The other diagonal of a flat convex quadrilateral with sides a, b, c, d in order, whose diagonal
 * `known` parts it into triangles (a, b) and (c, d). Null where the triangles do not close.
 */
const otherDiagonal = (a: number, b: number, c: number, d: number, known: number): number | null => {
  if (!isTriangle(a, b, known) || !isTriangle(c, d, known)) return null;
  const apex = (near: number, far: number): { x: number; y: number } => {
    const x = (near * near + known * known - far * far) / (2 * known);
    return { x, y: Math.sqrt(Math.max(0, near * near - x * x)) };
  };
  const one = apex(a, b);
  const two = apex(d, c);
  return Math.hypot(one.x - two.x, one.y + two.y);
};

/** How far a measured quilt is from square; an error where its figures fit no flat quadrilateral. */
export const measureSides = (sides: Sides, working: Working): SidesAnswer => {
  const { top, right, bottom, left } = sides;
  const perimeter = exact(top).add(right).add(bottom).add(left);
  working.line(`Perimeter: ${top} + ${right} + ${bottom} + ${left} = ${working.show(perimeter)}`);
  const across = exact(top).sub(bottom).abs();
  const down = exact(left).sub(right).abs();
  const opposite = across.compare(down) >= 0 ? across : down;
  working.line(
    `Opposite sides: top and bottom differ by ${working.show(across)}, left and right by ${working.show(down)}; the largest ${working.show(opposite)}`,
  );
  const longest = Math.max(top, right, bottom, left);
  if (longest >= top + right + bottom + left - longest) {
    throw new SpecError(
      'sides',
      'four sides that close: the longest shorter than the other three together',
      `${longest} against ${top + right + bottom + left - longest}`,
    );
  }
  const answer = { perimeter: Number(perimeter.valueOf()), oppositeDifference: Number(opposite.valueOf()) };
  const [first, measuredSecond] = sides.diagonals ?? [];
  if (first === undefined) {
    working.ask('What do the two diagonals measure? Without them the corners cannot be checked.');
    return { ...answer, ...working.carried() };
  }
  working.assume(
    'diagonals',
    'top left to bottom right, then top right to bottom left',
    'the order in which they are written',
  );
  const tolerance = sides.tolerance ?? TOLERANCE;
  if (sides.tolerance === undefined)
    working.assume(
      'tolerance',
      String(TOLERANCE),
      'share of a diagonal; tape and cloth give, common practice, no source',
    );
  const secondByFirst = otherDiagonal(top, right, bottom, left, first);
  const second = measuredSecond ?? secondByFirst ?? undefined;
  if (second === undefined) {
    throw new SpecError(
      'sides.diagonals',
      'a diagonal that closes a triangle with the sides it meets',
      String(first),
    );
  }
  if (measuredSecond !== undefined) {
    const firstBySecond = otherDiagonal(right, bottom, left, top, measuredSecond);
    const misfits = [
      secondByFirst === null
        ? Number.POSITIVE_INFINITY
        : Math.abs(secondByFirst - measuredSecond) / secondByFirst,
      firstBySecond === null ? Number.POSITIVE_INFINITY : Math.abs(firstBySecond - first) / firstBySecond,
    ];
    const misfit = Math.max(...misfits.filter(Number.isFinite), Math.min(...misfits));
    if (misfit > tolerance) {
      const wanted =
        secondByFirst === null
          ? 'diagonals that close triangles with the sides they meet'
          : `about ${decimal(secondByFirst, 2)} as second diagonal beside ${first}, within ${tolerance * 100} %: these sides and diagonals fit no flat quadrilateral`;
      throw new SpecError('sides.diagonals', wanted, JSON.stringify(sides.diagonals));
    }
    if (secondByFirst !== null) {
      working.line(
        `Four sides and one diagonal fix the other: beside ${first} it should be ${decimal(secondByFirst, 2)}; measured ${measuredSecond}, ${decimal(misfit * 100, 2)} % off, within ${tolerance * 100} %`,
      );
    }
  } else {
    working.line(`Four sides and one diagonal fix the other: ${decimal(second, 2)}`);
  }
  const skew =
    measuredSecond === undefined
      ? Math.abs(second - first)
      : Number(exact(first).sub(second).abs().valueOf());
  working.line(
    `Skew, the difference of the diagonals: ${decimal(Math.max(first, second))} - ${decimal(Math.min(first, second))} = ${decimal(skew)} ${working.unit}`,
  );
  const corners = [
    { corner: 'top-left', angle: angleBetween(top, left, second) },
    { corner: 'top-right', angle: angleBetween(top, right, first) },
    { corner: 'bottom-right', angle: angleBetween(bottom, right, second) },
    { corner: 'bottom-left', angle: angleBetween(bottom, left, first) },
  ].map(({ corner, angle }) => ({ corner, angle: decimal(angle), offSquare: decimal(Math.abs(angle - 90)) }));
  for (const { corner, angle, offSquare } of corners) {
    working.line(`Corner ${corner}: by the law of cosines ${angle} degrees, ${offSquare} from a right angle`);
  }
  const worst = corners.reduce((most, corner) => (corner.offSquare > most.offSquare ? corner : most));
  return {
    perimeter: answer.perimeter,
    skew: decimal(skew, 6),
    squareness: worst.offSquare,
    diagonalDifference: decimal(skew, 6),
    oppositeDifference: answer.oppositeDifference,
    worstCorner: worst,
    corners,
    ...working.carried(),
  };
};
