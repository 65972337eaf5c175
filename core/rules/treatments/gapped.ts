import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { carriedPlaces } from '../places/carried-places.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';
import { objectOfRepair } from './object-of-repair.ts';
import { type stitchOf, TAKES_STITCH } from './stitch-of.ts';

/** "(3-1 sewn with backstitch) and 3-2 with whipstitch": the same treatment elsewhere, with a stitch of its own. */
export function gapped(
  state: ReaderState,
  v: ClauseView,
  clause: Clause,
  placed: ClausePlaces,
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
): Draft | undefined {
  const last = state.drafts.findLast((d) => d.entry.kind !== 'material');
  if (!last || !isTreatment(last) || !isLastTold(state, last.clause, v.index)) return undefined;
  const goesOn = last.sentence === v.sentence && /^(and|,|but|&)$/.test(clause.joint);
  // "4-2/4-3 closed, machine. 5-1/6-1 by hand, 20 min": in a sentence that tells nothing but where and how
  const onlyHow =
    placed.kind === 'specific' &&
    last.sentence === v.sentence - 1 &&
    clause.items[0]?.place !== undefined &&
    clause.items.every((x) => x.place || x.seam || x.stitch || x.duration || ONLY_HOW.test(x.w));
  if (!goesOn && !onlyHow) return undefined;
  const { action, state: status, stitch: before } = last.entry;
  if (!action || !TAKES_STITCH.has(action)) return undefined;
  if (!onlyHow && (!before || before === stitch.stitch)) return undefined;
  const at = v.items.indexOf(stitch.item);
  if (v.items.slice(0, at).some((x) => x.action || x.fail || /^(is|'s|was|are|were|i)$/.test(x.w)))
    return undefined;
  // "machined shut, straight stitch": only how
  if (!v.items.some((x) => x.place || x.seam || x.finding || x.fabric || x.object)) return undefined;
  const places = placed.kind === 'specific' ? placed.places : carriedPlaces(state, v, undefined, placed);
  if (!places?.length) return undefined;
  const said = placed.kind === 'specific';
  return makeDraft(
    'treatment',
    v,
    {
      action: [action, 'treatment.gapped', undefined, 'implied'],
      state: [status, 'treatment.gapped', undefined, 'implied'],
      places: [
        places,
        said ? 'place.said' : 'place.carried',
        said ? placed.items : undefined,
        said ? 'said' : 'implied',
      ],
      stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item],
    },
    said ? 'said' : 'carried',
  );
}

const ONLY_HOW = /^(?:\/|-|by|in|with|on|the|and|&|,|seam|seams|stitch|st|too|all|both)$/;

/** Was nothing told since but how long it took: "closed 6-1 by hand (35 min) and 6-2 by machine"? */
const isLastTold = ({ clauses }: ReaderState, told: number, index: number): boolean =>
  clauses.slice(told + 1, index).every((c) => c.items.every((x) => x.duration || x.w === ','));

/** "(unpicked a label from the corner) and a piece of interfacing from behind 2-3": the taking off holds for another thing. */
export function gappedRemoval(
  state: ReaderState,
  v: ClauseView,
  clause: Clause,
  placed: ClausePlaces,
): Draft | undefined {
  // "the ties come out next and after that the backing", "binding first, then the ties"
  const inTurn = /^(then|after)$/.test(clause.joint);
  if (!(inTurn || (/^(and|,|&|\+|also)$/.test(clause.joint) && /^(specific|general)$/.test(placed.kind))))
    return undefined;
  const last = state.drafts.at(-1);
  if (!last || !isTreatment(last) || last.entry.action !== 'remove' || last.clause !== v.index - 1)
    return undefined;
  const things = v.items.filter(
    (x, k) =>
      !x.seam &&
      (x.object || x.finding === 'old-repair') &&
      x.object !== 'piece' &&
      // "… and the pins from the top border": where they were
      !(
        x.place &&
        / (?:from|off|on|in|along|out of) (?:the |both |all )?$/.test(wordsBetween(v.items, k - 3, k))
      ),
  );
  const thing = things[0];
  // "took the backing off and there's an old patch on 2-1": found, and not taken off
  const found = / (?:there|here|got|has|have|found|see) /.test(
    ` ${wordsBetween(v.items, 0, 2)} ${thing?.w ?? ''} `,
  );
  if (
    found ||
    things.length !== 1 ||
    !thing ||
    !v.items.every(
      (x) =>
        x === thing ||
        x.place ||
        LIGHT_WORD.test(x.w) ||
        x.quantity ||
        /^(stain|fading)$/.test(x.finding ?? ''),
    )
  )
    return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      action: ['remove', 'treatment.gapped', thing],
      state: [last.entry.state, 'treatment.gapped', undefined, 'implied'],
      object: [
        thing.finding === 'old-repair' ? objectOfRepair(thing.w) : thing.object,
        'treatment.gapped',
        thing,
      ],
      ...(placed.places.length ? { places: [placed.places, 'place.said', placed.items] as const } : {}),
    } as Parameters<typeof makeDraft>[2],
    placed.places.length ? 'said' : 'unneeded',
  );
}

const LIGHT_WORD =
  /^(the|an?|its|old|that|piece|bit|of|strip|modern|other|some|from|on|in|at|along|off|behind|under|out|after|next|last|then|paper|cloth|little|small|second|loose|another|scrap|also|with|together|it|them|as|well|too|quilt)$/;
