import type { Action } from '../../../shared/vocabulary.ts';

/** Treatments of the whole quilt where no place is said. */
export const WHOLE_QUILT = new Set<Action>([
  'wash',
  'dry',
  'bind',
  'layer',
  'baste',
  'square-up',
  'photograph',
  'measure',
  'press',
  'tie',
  'quilt',
  'clean',
]);
