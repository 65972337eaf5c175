import type { ReaderState } from '../reader-state.ts';

/** "low on thread, need three spools": wanted, and then how much of it, is one want. */
export function joinWants(state: ReaderState): void {
  const wanted = state.drafts.filter((d) => d.entry.kind === 'material' && d.entry.use === 'needed');
  if (wanted.length < 2) return;
  const vague = wanted.filter((d, k) => {
    const e = d.entry;
    const next = wanted[k + 1];
    return (
      e.kind === 'material' &&
      e.quantity === undefined &&
      !e.unit &&
      !e.name?.includes(' ') &&
      next?.sentence === d.sentence &&
      next.entry.kind === 'material' &&
      next.entry.material === e.material &&
      next.entry.quantity !== undefined
    );
  });
  if (vague.length) state.drafts = state.drafts.filter((d) => !vague.includes(d));
}
