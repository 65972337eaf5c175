import type { Entry, Origin, ReadEntry } from '../../shared/entry.ts';
import type { Item } from './item.ts';

/** An entry while it is being made: its slots, and for each the rule and the words that gave it. */
export type Draft = {
  entry: Entry;
  origins: Record<string, Origin>;
  reason?: string;
  /** How its places came: said in the clause, taken from what was said before, or not at all. */
  placed: 'said' | 'carried' | 'none' | 'unneeded';
  /** Words that named a block outside the grid. */
  outside?: boolean;
  /** Words for a cloth that the quilt does not name, where the place hangs on it. */
  cloth?: string;
  clause: number;
  sentence: number;
  /** A finding that is only pointed at ("the tear") and not told. */
  pointed?: boolean;
};

type Slots = Partial<
  Record<string, [value: unknown, rule: string, item: Item | Item[] | undefined, how?: 'said' | 'implied']>
>;

const AMOUNTS = new Set(['value', 'quantity', 'minutes']);

/** No length, number of things or time at work is nothing, less than nothing or without end: such a slot was not said. */
export const isNoAmount = (slot: string, value: unknown): boolean =>
  AMOUNTS.has(slot) && !(typeof value === 'number' && value > 0 && Number.isFinite(value));

/** Makes a draft; slots whose value is undefined, or an amount that can't be, are left out. */
export function makeDraft(
  kind: Entry['kind'],
  clause: { index: number; sentence: number; items: Item[] },
  slots: Slots,
  placed: Draft['placed'],
): Draft {
  const entry: Record<string, unknown> = { kind };
  const origins: Record<string, Origin> = {};
  const whole = spanOf(clause.items);
  origins['entry'] = { rule: `clause.${kind}`, how: 'said', ...whole };
  for (const [slot, given] of Object.entries(slots)) {
    if (!given || given[0] === undefined || isNoAmount(slot, given[0])) continue;
    const [value, rule, item, how] = given;
    entry[slot] = value;
    const span = item ? spanOf(Array.isArray(item) ? item : [item]) : whole;
    origins[slot] = { rule, how: how ?? (item ? 'said' : 'implied'), ...span };
  }
  return { entry: entry as Entry, origins, placed, clause: clause.index, sentence: clause.sentence };
}

function spanOf(items: Item[]): { from: number; to: number } {
  if (!items.length) return { from: 0, to: 0 };
  let from = Number.POSITIVE_INFINITY;
  let to = 0;
  for (const item of items) {
    from = Math.min(from, item.token.from);
    to = Math.max(to, item.end ?? item.token.to);
  }
  return { from, to };
}

/** What goes out of the reader. */
export function readEntryOf(draft: Draft): ReadEntry {
  return { entry: draft.entry, origins: draft.origins, ...(draft.reason ? { reason: draft.reason } : {}) };
}
