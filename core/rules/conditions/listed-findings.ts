import type { ClauseView } from '../clause-view.ts';
import type { Draft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';

const JOINT = /^(,|and|&|\+|plus)$/;
const BEFORE_NAME =
  /^(a|an|some|one|two|three|a few|a couple of|few|couple|of|also|the|odd|bit|bits|spot|little|small|big|large|bad|tiny|old|loads|lots|bits of|plenty)$/;
const WHERE =
  /^(in|on|at|along|across|near|by|over|all over|down|round|around|to|inside|through|throughout)$/;

/** "a tear", "there's mould", "I can see a hole": nothing but things found. */
const isBareList = (items: Item[]): boolean => {
  const found = items.findIndex((x) => x.finding || x.fail);
  return (
    items
      .slice(0, found)
      .every(
        (x) =>
          BEFORE_NAME.test(x.w) ||
          /^(there|'s|are|is|was|were|i|can|see|found|spotted|noticed|and|got|um|uh)$/.test(x.w),
      ) &&
    items
      .slice(found + 1)
      .every(
        (x) => x.finding || x.fail || JOINT.test(x.w) || BEFORE_NAME.test(x.w) || WHERE.test(x.w) || x.place,
      )
  );
};

/**
 * "there's a tear and a stain on 2-3", "holes and stains all over the backing": things found that are named in one list lie
 * where the last of them is said to lie. The finding told last is `last`; those before it that have no place of their own
 * get its places.
 */
export function placeListed(state: ReaderState, v: ClauseView, last: Draft): void {
  if (last.entry.kind !== 'condition' || last.placed !== 'said' || !last.entry.places?.length) return;
  const found = v.items.findIndex((x) => x.finding || x.fail);
  const place = v.items.findIndex((x) => x.place || x.fabric);
  if (
    found < 0 ||
    place < found ||
    !(v.items.slice(0, found).every((x) => BEFORE_NAME.test(x.w)) || isBareList(v.items))
  )
    return;
  if (!v.items.slice(found + 1, place).some((x) => WHERE.test(x.w))) return;
  // "2-3 is frayed and faded, and there's mildew in 4-5": a list begun anew
  const anew = v.items.slice(0, found).some((x) => /^(there|i|we|it)$/.test(x.w));
  let clause = v.index;
  for (const draft of state.drafts.slice(0, state.drafts.indexOf(last)).reverse()) {
    const { entry } = draft;
    const own = state.clauses[draft.clause]?.items ?? [];
    if (
      entry.kind !== 'condition' ||
      // "darned 2-5. a tear and a stain on 2-3": a bare thing found lies where the list does, and not where the work was
      !(draft.placed === 'none' || (draft.placed === 'carried' && isBareList(own))) ||
      draft.outside ||
      draft.sentence !== v.sentence
    )
      return;
    if (draft.clause !== clause) {
      if (anew) return;
      if (draft.clause !== clause - 1 || !JOINT.test(state.clauses[clause]!.joint)) return;
      clause = draft.clause;
      if (own.some((x) => x.place || x.fabric)) return;
    }
    entry.places = last.entry.places;
    draft.placed = 'said';
    draft.origins['places'] = last.origins['places']!;
  }
}
