import type { SidesAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { decimal, type Exact, exact, largest } from './exact.ts';
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

const differenceOf = (
  words: string,
  one: number | undefined,
  other: number | undefined,
  working: Working,
): Exact | undefined => {
  if (one === undefined || other === undefined) return undefined;
  const difference = exact(one).sub(other).abs();
  working.line(`${words} differ by ${working.show(difference)}`);
  return difference;
};

/** Largest share by which a measured diagonal and the one that the sides and the other diagonal fix disagree. */
const misfitOf = (corners: readonly number[], first: number, second: number): number => {
  const [top, right, bottom, left] = corners as [number, number, number, number];
  const secondByFirst = otherDiagonal(top, right, bottom, left, first);
  const firstBySecond = otherDiagonal(right, bottom, left, top, second);
  const misfits = [
    secondByFirst === null ? Number.POSITIVE_INFINITY : Math.abs(secondByFirst - second) / secondByFirst,
    firstBySecond === null ? Number.POSITIVE_INFINITY : Math.abs(firstBySecond - first) / firstBySecond,
  ];
  return Math.max(...misfits.filter(Number.isFinite), Math.min(...misfits));
};

/** Share by which a side and the named size may differ before it is worth measuring again. */
const WORTH_MEASURING = 0.05;

/** Warns where the four sides and the named width and length tell of different quilts. */
const compareWithNamed = (sides: Sides, quilt: EstimateSpec['quilt'], working: Working): void => {
  for (const [field, named, of] of [
    ['quilt.width', quilt?.width, ['top', 'bottom']],
    ['quilt.length', quilt?.length, ['left', 'right']],
  ] as const) {
    for (const side of of) {
      const measured = sides[side];
      if (named === undefined || measured === undefined) continue;
      if (Math.abs(measured - named) > named * WORTH_MEASURING) {
        working.warn(
          `${field} is ${named} ${working.unit}, and the ${side} measures ${measured} ${working.unit}: measure again. The binding goes by the sides, everything else by ${field}`,
        );
      } else if (measured > named) {
        working.line(
          `The ${side} is ${working.show(exact(measured).sub(named))} longer than ${field}: the overage has to cover it`,
        );
      }
    }
  }
};

/** How far a measured quilt is from square; an error where its figures fit no flat quadrilateral. */
export const measureSides = (sides: Sides, quilt: EstimateSpec['quilt'], working: Working): SidesAnswer => {
  compareWithNamed(sides, quilt, working);
  const { top, right, bottom, left } = sides;
  const across = differenceOf('Top and bottom', top, bottom, working);
  const down = differenceOf('Left and right', left, right, working);
  const differences = [across, down].filter((one) => one !== undefined);
  const opposite =
    differences.length > 0 ? { oppositeDifference: Number(largest(...differences).valueOf()) } : {};
  if (top === undefined || right === undefined || bottom === undefined || left === undefined) {
    const missing = Object.entries({ top, right, bottom, left })
      .filter(([, side]) => side === undefined)
      .map(([side]) => side);
    working.ask(`What does the ${missing.join(', and the ')} side measure?`);
    const [one, other] = sides.diagonals ?? [];
    if (one === undefined || other === undefined) return { ...opposite, ...working.carried() };
    const skew = exact(one).sub(other).abs();
    working.line(`Skew, the difference of the diagonals: ${working.show(skew)}`);
    return {
      ...opposite,
      skew: decimal(skew, 6),
      diagonalDifference: decimal(skew, 6),
      ...working.carried(),
    };
  }
  const perimeter = exact(top).add(right).add(bottom).add(left);
  working.line(`Perimeter: ${top} + ${right} + ${bottom} + ${left} = ${working.show(perimeter)}`);
  const longest = Math.max(top, right, bottom, left);
  if (longest >= top + right + bottom + left - longest) {
    throw new SpecError(
      'sides',
      'four sides that close: the longest shorter than the other three together',
      `${longest} against ${top + right + bottom + left - longest}`,
    );
  }
  const answer = { perimeter: Number(perimeter.valueOf()), ...opposite };
  let [first, measuredSecond] = sides.diagonals ?? [];
  if (first === undefined) {
    working.ask('What do the two diagonals measure? Without them the corners cannot be checked.');
    return { ...answer, ...working.carried() };
  }
  const tolerance = sides.tolerance ?? TOLERANCE;
  if (sides.tolerance === undefined)
    working.assume(
      'tolerance',
      String(TOLERANCE),
      'share of a diagonal; tape and cloth give, common practice, no source',
    );
  const round = [top, right, bottom, left];
  if (
    measuredSecond !== undefined &&
    misfitOf(round, first, measuredSecond) > tolerance &&
    misfitOf(round, measuredSecond, first) <= tolerance
  ) {
    [first, measuredSecond] = [measuredSecond, first];
    working.assume(
      'diagonals',
      'top right to bottom left, then top left to bottom right',
      'only in this order do they fit the sides',
    );
  } else {
    working.assume(
      'diagonals',
      'top left to bottom right, then top right to bottom left',
      'the order in which they are written',
    );
  }
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
    const misfit = misfitOf(round, first, measuredSecond);
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
    ...answer,
    skew: decimal(skew, 6),
    squareness: worst.offSquare,
    diagonalDifference: decimal(skew, 6),
    worstCorner: worst,
    corners,
    ...working.carried(),
  };
};
