import type { Item } from '../item.ts';

/** What an item can be put right by: only like takes the place of like. */
export type Sort =
  | 'place'
  | 'clock'
  | 'span'
  | 'quantity'
  | 'cost'
  | 'duration'
  | 'stitch'
  | 'finding'
  | 'action'
  | 'material'
  | 'task';

/** All sorts of thing that an item can be. */
export function sortsOf(item: Item): Sort[] {
  const sorts: Sort[] = [];
  if (item.place && !['place.it', 'place.them', 'place.both'].includes(item.place.rule)) sorts.push('place');
  if (item.clock) sorts.push('clock');
  if (item.span) sorts.push('span');
  if (item.quantity) sorts.push('quantity');
  if (item.cost) sorts.push('cost');
  if (item.duration) sorts.push('duration');
  if (item.stitch) sorts.push('stitch');
  if (item.finding) sorts.push('finding');
  if (item.action) sorts.push('action');
  if (item.material) sorts.push('material');
  if (item.task) sorts.push('task');
  return sorts;
}
