import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import type { Cue } from '../cues.ts';
import { put, type Standing } from '../standing.ts';

export type Work = {
  state: ReaderState;
  standing: Standing[];
  cue: Cue;
  words: string;
  /** Items said to be wrong: "not 3-3". */
  wrong: Set<Item>;
  /** Items that gave a change, or only said again what stands. */
  used: Set<Item>;
  changed: boolean;
  /** Drafts that tell something of their own beside the mending. */
  told: Set<Draft>;
};

export type Segment = { items: Item[]; words: string };

export function change(
  work: Work,
  s: Standing,
  slot: string,
  value: unknown,
  rule: string,
  items: Item[],
): void {
  const old = (s.draft.entry as Record<string, unknown>)[slot];
  for (const x of items) work.used.add(x);
  if (JSON.stringify(old) === JSON.stringify(value)) return;
  put(s.draft, slot, value, `amend.${rule}`, items);
  work.changed = true;
}
