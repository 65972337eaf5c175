import type { Clause } from '../clause/clause.ts';
import { isPredicate } from '../clause/is-predicate.ts';
import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { splitBlock } from '../places/grid.ts';
import { type ClausePlaces, placesOfClause } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { WHOLE_QUILT } from './whole-quilt.ts';

/** "somebody long ago mended 1-4 with a piece of a shirt" */
export const MENDED_ONCE =
  / (?:somebody|someone|whoever|some (?:fool|clot|soul)|they|she|he) (?:(?:has|had|must have|'d|'s|once|long|ago|years|back|before|already|did|just) ){0,4}(?:mended|repaired|fixed|darned|patched|had a go at|botched|bodged|been at (?:it|this|that)(?: one)?) /;

/** An old repair at the place named; nothing where no place is said. */
export function mendedByOthers(state: ReaderState, v: ClauseView, placed: ClausePlaces): void {
  // "4-6, somebody fixed it": the place was named first
  const lead = state.clauses[v.index - 1];
  if (
    placed.kind === 'none' &&
    !placed.outside &&
    lead?.sentence === v.sentence &&
    lead.items.every((x) => x.place)
  )
    placed = placesOfClause(lead.items);
  const outside = placed.outside && !placed.places.length;
  if (!outside && (placed.kind !== 'specific' || !placed.places.some((p) => splitBlock(p)))) return;
  const draft = makeDraft(
    'condition',
    v,
    {
      finding: ['old-repair', 'condition.mended-by-others', v.items],
      places: [outside ? [] : placed.places, 'place.said', placed.items],
    },
    outside ? 'none' : 'said',
  );
  if (outside) draft.outside = true;
  state.drafts.push(draft);
}

const OTHERS = new Set([
  'she',
  'he',
  'they',
  'members',
  'kids',
  'children',
  'grandmother',
  'gran',
  'granny',
  'nan',
  'maker',
  'someone',
  'somebody',
  'sister',
  'aunt',
  'auntie',
  'mother',
  'mum',
  'women',
  'ladies',
  'street',
  'class',
  'who',
  'girls',
  'pupils',
  'teachers',
  'family',
  'wife',
  'guild',
  'club',
  'sisters',
  'neighbours',
  'neighbors',
  'crew',
  'cousins',
  'daughters',
  'people',
  'folk',
  'cousin',
  'daughter',
  'whoever',
  'clot',
  'idiot',
  'fool',
  'restorer',
  'repairer',
  'mender',
  'dealer',
  'bloke',
  'chap',
  'fella',
  'fellow',
  'guy',
  'predecessor',
]);

const CLUMSILY = /^(?:badly|clumsily|crudely|roughly|poorly|carelessly|sloppily|hamfistedly|amateurishly)$/;
const EARLIER = /^(?:earlier|previous|unknown|former|last|second|later|another|other)$/;

/** Work told of others, long ago: "the kids sewed it up", "what somebody fused behind there". */
export function isOthers(items: Item[], at: number): boolean {
  // "there's mending of some kind in 3-3"
  if (
    items[at]?.action?.form === 'ing' &&
    / there ('s|is|was) (some |old |earlier |a lot of |a bit of |lots of |clumsy |crude )*$/.test(
      ` ${items
        .slice(0, at)
        .map((x) => x.w)
        .join(' ')} `,
    )
  )
    return true;
  if (
    items[at]?.action?.form !== 'past' &&
    !/^(put|stuck|glued|ironed|patch|fusible|set|laid|cobbled|bodged|botched|slapped|whacked)$/.test(
      items[at]?.w ?? '',
    )
  )
    return false;
  // "there's a patch on 1-3, an old one badly sewn", "… and sewn it badly": nobody says so of work just done
  if (
    CLUMSILY.test(items[at - 1]?.w ?? '') ||
    (/^(?:it|them|that|this)$/.test(items[at + 1]?.w ?? '') && CLUMSILY.test(items[at + 2]?.w ?? ''))
  )
    return true;
  for (let m = at - 1; m >= Math.max(0, at - 4); m--) {
    const w = items[m]!.w;
    // "an earlier hand has overcast the seams", "the last person to mend it went over it by machine"
    if (/^(?:hand|person|mender|repairer)$/.test(w) && EARLIER.test(items[m - 1]?.w ?? '')) return true;
    if (w === 'she' && isOfQuilt(items, m, at)) return false;
    if (
      OTHERS.has(w) ||
      (w === 'owner' && /^(previous|former|last|earlier|past|old)$/.test(items[m - 1]?.w ?? ''))
    )
      return !items
        .slice(m + 1, at)
        .some((x) =>
          /^(wants|want|would|'d|asked|likes|needs|needed|says|said|'re|are|were|be|been|being|getting|get|gets|'ll|will|need|should|must|can|could)$/.test(
            x.w,
          ),
        );
    if (w === 'i' || w === 'and' || w === ',') return false;
  }
  return false;
}

/** "she's out of the wash, laying flat", "she's bound": the quilt is spoken of as a boat is; "she's washed it" is the owner. */
function isOfQuilt(items: Item[], she: number, at: number): boolean {
  if (!/^('s|is)$/.test(items[she + 1]?.w ?? '') || !WHOLE_QUILT.has(items[at]!.action!.v)) return false;
  if (!items.slice(she + 2, at).every((x) => /^(all|now|finally|just|at last|done|been|fully)$/.test(x.w)))
    return false;
  const next = items[at + 1];
  return (
    / (?:wash|bath|tub)$/.test(items[at]!.w) ||
    !next ||
    next.token.kind === 'mark' ||
    /^(and|now|then|but|at|up|today|tonight|lay|laying|lying|drying|hung|spread|ready)$/.test(next.w)
  );
}

const SEEN =
  / (?:(?:i|you|we) (?:can|could) (?:just |still |even )?(?:see|feel)|(?:i|we) (?:see|feel|felt|noticed)) (?!to |how |why |if |whether |that |like )/;
const SEES = /^(?:see|feel|felt|noticed)$/;
const LIES_THERE =
  /^ (?:(?:and|with|,|but|so) )*(?:it|there)(?: 's| is| has| had| was)+(?: got)? (?:a |some |old |bit |of |the )*(?=\S)/;

/** "an old repair in 3-3, interfacing glued on behind": how the old repair was made, and no work of today. */
export function tellsOldRepair(
  state: ReaderState,
  clause: Clause,
  v: { sentence: number },
  at: number,
  placed: ClausePlaces,
): boolean {
  const { items } = clause;
  const found = state.drafts.at(-1);
  const here = items.some((x, k) => x.finding === 'old-repair' && isPredicate(items, k));
  const before =
    found?.entry.kind === 'condition' &&
    found.entry.finding === 'old-repair' &&
    found.sentence === v.sentence;
  const words = wordsBetween(items);
  // "I can feel the interfacing behind it": what is seen there is no work of today, whoever put it there
  if (
    SEEN.test(words) &&
    !items
      .slice(items.findIndex((x) => SEES.test(x.w)))
      .some((x) => x.action?.form === 'past' && x.w !== 'felt')
  )
    return true;
  if (!here && !(before && placed.kind !== 'specific')) return false;
  // "…, it's got net over it"
  if (before && !here && LIES_THERE.test(words)) return true;
  if (items.some((x) => /^(i|'ve|i've|now|new|today|tonight)$/.test(x.w))) return false;
  const verb = items[at]!;
  const past =
    verb.action?.form === 'past' ||
    /^(glued|stuck|sewn|stitched|fused|ironed|tacked|interfacing|fusible)$/.test(verb.w) ||
    // "has an old mend, interfacing glued behind"
    (here &&
      /^(has|have|had|'s|got)$/.test(verb.w) &&
      items.findIndex((x) => x.finding === 'old-repair') > at);
  return (
    past &&
    (here || /^(with|,|)$/.test(clause.joint)) &&
    !/^(took|taken|removed|peeled|unpicked)$/.test(verb.w)
  );
}
