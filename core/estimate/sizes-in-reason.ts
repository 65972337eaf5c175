import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { SpecError } from './spec-error.ts';

/** The most that a length of this name can sensibly be, inches; our own limits, wide of anything that is sold or sewn. */
const MOST_IN: Readonly<Record<string, number>> = {
  usable: 240,
  fabricWidth: 240,
  roll: 240,
  selvedge: 12,
  straighten: 72,
  overage: 36,
  seam: 40,
  allowance: 240,
  extra: 100,
  strip: 240,
  repeat: 240,
  every: 120,
  tail: 36,
  stitch: 12,
  knot: 36,
  maxSpacing: 120,
  spacing: 120,
  diagonals: 900,
  width: 600,
  length: 600,
};
/** Parts whose figures are no lengths of cloth. */
const OTHER_PARTS = new Set(['thread', 'work', 'price', 'shopping', 'quilt']);

/** Throws SpecError, naming the field, where a length is beyond anything that a quilt is made with. */
export const keepInReason = (spec: EstimateSpec): void => {
  const unit = spec.unit ?? 'in';
  const check = (value: unknown, key: string, path: string): void => {
    if (typeof value === 'number') {
      const most = MOST_IN[key] === undefined ? undefined : MOST_IN[key] * (unit === 'cm' ? 2.54 : 1);
      if (most !== undefined && value > most)
        throw new SpecError(path, `a length of at most ${most} ${unit}`, String(value));
    } else if (Array.isArray(value)) {
      value.forEach((one, i) => {
        check(one, key, `${path}[${i}]`);
      });
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, one] of Object.entries(value)) check(one, name, `${path}.${name}`);
    }
  };
  for (const [part, value] of Object.entries(spec)) if (!OTHER_PARTS.has(part)) check(value, part, part);
};
