import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { type Exact, exact, largest } from './exact.ts';
import { SpecError } from './spec-error.ts';

/** The quilt as the parts need it: width, length and the true way round. */
export interface QuiltSize {
  width: Exact;
  length: Exact;
  perimeter: Exact;
  /** Whether the perimeter comes from four measured sides. */
  measured: boolean;
}
/** A quilt whose size is not known, or only one way. */
export interface UnknownSize {
  width?: Exact;
  length?: Exact;
  /** What must be measured. */
  question: string;
}

const LARGEST_IN = 600;
const SMALLEST_IN = 1;
const SIDES = ['top', 'right', 'bottom', 'left'] as const;

export const isKnown = (size: QuiltSize | UnknownSize): size is QuiltSize => 'perimeter' in size;

/**
 * The named width and length; where one is not named, the longer of its two measured sides. Throws
 * SpecError for a size that no quilt has.
 */
export const quiltSizeOf = (spec: EstimateSpec): QuiltSize | UnknownSize => {
  const { quilt, sides, unit = 'in' } = spec;
  const perUnit = unit === 'cm' ? 2.54 : 1;
  const most = LARGEST_IN * perUnit;
  const least = SMALLEST_IN * perUnit;
  const fields: [string, number | undefined][] = [
    ['quilt.width', quilt?.width],
    ['quilt.length', quilt?.length],
    ...SIDES.map((side): [string, number | undefined] => [`sides.${side}`, sides?.[side]]),
  ];
  for (const [field, value] of fields) {
    if (value !== undefined && value > most)
      throw new SpecError(field, `a quilt no larger than ${most} ${unit}`, String(value));
    if (value !== undefined && value < least)
      throw new SpecError(field, `a quilt of at least ${least} ${unit}`, String(value));
  }
  const longer = (a: number | undefined, b: number | undefined): Exact | undefined => {
    const known = [a, b].filter((side) => side !== undefined).map(exact);
    return known.length > 0 ? largest(...known) : undefined;
  };
  const width = quilt?.width === undefined ? longer(sides?.top, sides?.bottom) : exact(quilt.width);
  const length = quilt?.length === undefined ? longer(sides?.left, sides?.right) : exact(quilt.length);
  if (!width || !length) {
    return {
      ...(width ? { width } : {}),
      ...(length ? { length } : {}),
      question: width
        ? 'How long is the quilt?'
        : length
          ? 'How wide is the quilt?'
          : 'How wide and how long is the quilt?',
    };
  }
  const all = SIDES.map((side) => sides?.[side]).filter((side) => side !== undefined);
  const measured = all.length === SIDES.length;
  const perimeter = measured ? all.reduce((sum, side) => sum.add(side), exact(0)) : width.add(length).mul(2);
  return { width, length, perimeter, measured };
};
