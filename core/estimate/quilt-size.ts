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

const LARGEST_IN = 600;

/** From the named width and length, else from the longer of the measured sides; null where neither is known. */
export const quiltSizeOf = (spec: EstimateSpec): QuiltSize | null => {
  const { quilt, sides } = spec;
  const limit = spec.unit === 'cm' ? LARGEST_IN * 2.54 : LARGEST_IN;
  if (quilt) {
    for (const [field, value] of [
      ['quilt.width', quilt.width],
      ['quilt.length', quilt.length],
    ] as const) {
      if (value > limit)
        throw new SpecError(field, `a quilt no larger than ${limit} ${spec.unit ?? 'in'}`, String(value));
    }
  }
  const perimeter = sides ? exact(sides.top).add(sides.right).add(sides.bottom).add(sides.left) : null;
  if (quilt) {
    const width = exact(quilt.width);
    const length = exact(quilt.length);
    return { width, length, perimeter: perimeter ?? width.add(length).mul(2), measured: perimeter !== null };
  }
  if (sides && perimeter) {
    return {
      width: largest(exact(sides.top), exact(sides.bottom)),
      length: largest(exact(sides.left), exact(sides.right)),
      perimeter,
      measured: true,
    };
  }
  return null;
};
