import type { Clause } from './clause/clause.ts';
import type { Item } from './item.ts';

/** A clause with its place in the note. */
export type ClauseView = { index: number; sentence: number; items: Item[] };

/** The clause as the rules look at it. */
export const view = (clause: Clause, index: number): ClauseView => ({
  index,
  sentence: clause.sentence,
  items: clause.items,
});
