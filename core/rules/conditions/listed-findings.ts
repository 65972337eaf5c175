import type { ClauseView } from '../clause-view.ts';
import type { Draft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';

const JOINT = /^(,|and|&|\+|plus)$/;
const BEFORE_NAME =
  /^(a|an|some|one|two|three|a few|a couple of|few|couple|of|also|the|odd|bit|bits|spot|little|small|big|large|bad|tiny|old|loads|lots|bits of|plenty)$/;
const WHERE =
  /^(in|on|at|along|across|near|by|over|all over|down|round|around|to|inside|through|throughout)$/;

/**
 * "there's a tear and a stain on 2-3", "holes and stains all over the backing": things found that are named in one list lie
 * where the last of them is said to lie. The finding told last is `last`; those before it that have no place of their own
 * get its places.
 */
export function placeListed(state: ReaderState, v: ClauseView, last: Draft): void {
  if (last.entry.kind !== 'condition' || last.placed !== 'said' || !last.entry.places?.length) return;
  const found = v.items.findIndex((x) => x.finding || x.fail);
  const place = v.items.findIndex((x) => x.place || x.fabric);
  if (found < 0 || place < found || !v.items.slice(0, found).every((x) => BEFORE_NAME.test(x.w))) return;
  if (!v.items.slice(found + 1, place).some((x) => WHERE.test(x.w))) return;
  let clause = v.index;
  for (const draft of state.drafts.slice(0, state.drafts.indexOf(last)).reverse()) {
    const { entry } = draft;
    if (
      entry.kind !== 'condition' ||
      draft.placed !== 'none' ||
      draft.outside ||
      draft.sentence !== v.sentence
    )
      return;
    if (draft.clause !== clause) {
      if (draft.clause !== clause - 1 || !JOINT.test(state.clauses[clause]!.joint)) return;
      clause = draft.clause;
      if (state.clauses[clause]!.items.some((x) => x.place || x.fabric)) return;
    }
    entry.places = last.entry.places;
    draft.placed = 'said';
    draft.origins['places'] = last.origins['places']!;
  }
}
