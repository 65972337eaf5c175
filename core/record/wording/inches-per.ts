import type { LengthUnit } from '../../../shared/vocabulary.ts';

/** Inches in one of each unit; the yard is 0.9144 m exactly (international yard, 1959). */
export const INCHES_PER: Record<LengthUnit, number> = {
  in: 1,
  ft: 12,
  yd: 36,
  m: 100 / 2.54,
  cm: 1 / 2.54,
  mm: 0.1 / 2.54,
};
