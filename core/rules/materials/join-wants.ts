import type { ReaderState } from '../reader-state.ts';

/** "low on thread, need three spools", "lawn enough, a quarter of a metre of it": told, and then how much of it, is one entry. */
export function joinWants(state: ReaderState): void {
  join(state, 'needed');
  join(state, 'on-hand');
}

function join(state: ReaderState, use: 'needed' | 'on-hand'): void {
  const wanted = state.drafts.filter((d) => d.entry.kind === 'material' && d.entry.use === use);
  if (wanted.length < 2) return;
  const vague = wanted.filter((d, k) => {
    const e = d.entry;
    const next = wanted[k + 1];
    return (
      e.kind === 'material' &&
      e.quantity === undefined &&
      !e.unit &&
      // a name of its own is kept where the amount that follows has none
      (next?.entry.kind === 'material' && !next.entry.name
        ? true
        : use === 'needed' && !e.name?.includes(' ')) &&
      next?.sentence === d.sentence &&
      next.entry.kind === 'material' &&
      next.entry.material === e.material &&
      next.entry.quantity !== undefined
    );
  });
  for (const d of vague) {
    const next = wanted[wanted.indexOf(d) + 1]!.entry;
    if (d.entry.kind === 'material' && next.kind === 'material' && d.entry.name) next.name ??= d.entry.name;
  }
  if (vague.length) state.drafts = state.drafts.filter((d) => !vague.includes(d));
}
