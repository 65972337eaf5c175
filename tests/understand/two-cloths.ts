import type { QuiltGrid } from '../../shared/quilt.ts';

/** An invented quilt of six rows of five with two cloths in two blocks each, which sentences that are put together speak of. */
export const QUILT: QuiltGrid = {
  rows: 6,
  blocks: 5,
  fabrics: { 'green twill': ['1-1', '3-2'], pinstripe: ['2-2', '4-4'] },
};
/** A Saturday afternoon, half past three. */
export const AFTERNOON = '2026-03-14T15:30:00-05:00';
