import type { Clause } from '../clause/clause.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';

/** "2-3 ditto, 40" after a treatment told with its minutes: minutes again. */
export function bareMinutes(state: ReaderState, clause: Clause): Item | undefined {
  const last = clause.items.at(-1);
  const n = last?.quantity?.unit === undefined ? last?.quantity?.value : undefined;
  if (!n || n < 5 || n > 240 || clause.items.some((x) => x.duration)) return undefined;
  const timed = state.memory.last?.entries.some(
    ({ entry: e }) => e.kind === 'treatment' && e.minutes !== undefined,
  );
  return timed ? last : undefined;
}
