import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { type Cue, cueOf } from '../cues.ts';
import type { Standing } from '../standing.ts';
import { amountAgain } from './amount-again.ts';
import { oneEndAgain, stretchAgain } from './bare-again.ts';
import { clothForPlace } from './cloth-for-place.ts';
import { deedAgain } from './deed-again.ts';
import {
  deniedFindings,
  denyFindings,
  isPartUndone,
  NOT_DONE,
  notDone,
  stillInHand,
  toldOfOthers,
} from './deny.ts';
import { forTheOne } from './for-the-one.ts';
import {
  deniesAtOnce,
  measuresAgain,
  movesFinding,
  namesPlaceBesides,
  plainEnough,
  reachesLess,
  tellsAnew,
  tellsAnotherDeed,
  tellsStitch,
  tellsWork,
  unexplained,
} from './is-mend.ts';
import { itIsThatOne, itWasThis } from './it-was-this.ts';
import { complete, sharesPlace } from './items.ts';
import { anchored } from './likest.ts';
import { mendNumbers, swapNumbers } from './mend-numbers.ts';
import {
  addLeftOut,
  allBut,
  clothToldLate,
  forPart,
  keepOnly,
  mendMatters,
  noStuff,
  otherChoice,
  otherSide,
  strikeNth,
  strikePlaces,
  wrongLine,
} from './mend-parts.ts';
import { mendPlaces, placeItems } from './mend-places.ts';
import { mendStitch } from './mend-stitch.ts';
import { mendTimes } from './mend-times.ts';
import { mendWork, tookLength, tookMinutes } from './mend-work.ts';
import type { Segment, Work } from './mending.ts';
import { minutesOfOther } from './minutes-of-other.ts';
import { notYet } from './not-yet.ts';
import { numbersInRow } from './numbers-in-row.ts';
import { endsAt, foundOtherwise, numbersAgain, partOfIt } from './of-what-stands.ts';
import { oneOfSeveral } from './one-of-several.ts';
import { onlyPartDone } from './only-part-done.ts';
import { otherAxis } from './other-axis.ts';
import { otherUse } from './other-use.ts';
import { partNotYet } from './part-not-yet.ts';
import { partTakenBack } from './part-taken-back.ts';
import { resolvePlaces } from './resolve-places.ts';
import { lessOfIt, moreThan, placeHasNot, placeNotDone, restated } from './restated.ts';
import { sparedPlace } from './spared-place.ts';
import { stillThere } from './still-there.ts';
import { STRIKE_LOGGED, strikeOut } from './strike-out.ts';
import { leftOver, substitute, swapStuff } from './substitute.ts';
import { swapRound } from './swap-round.ts';
import { segmentsOf, standsIn, wrongItems } from './wrong-items.ts';

/**
 * Reads a note as a mend of the last one: what it says is laid beside the entries that stand, by kind, name, action, finding,
 * stitch and place, and what differs is put in. Gives the whole set, or undefined where the note mends nothing.
 */
export function correct(
  state: ReaderState,
  standing: Standing[],
  items: Item[],
  words: string,
  cue: Cue = cueOf(words),
): Draft[] | undefined {
  if (!standing.length) return undefined;
  const said = ` ${words} `;
  const spared = sparedPlace(state.drafts, standing, items);
  if (spared) return spared;
  const picked =
    minutesOfOther(standing, items) ??
    strikeNth(standing, said) ??
    partTakenBack(standing, items) ??
    partNotYet(standing, items) ??
    strikePlaces(standing, items) ??
    keepOnly(standing, items, said) ??
    noStuff(standing, items, said) ??
    onlyPartDone(standing, items, said) ??
    notYet(state, standing, items, said);
  if (picked) return picked.map((s) => s.draft);
  const together = tookLength(state, standing, items);
  if (together) return together;
  const inRow = numbersInRow(state, standing, items, said);
  if (inRow) return inRow;
  const left = allBut(state, standing, items);
  if (left) return [...standing.map((s) => s.draft), ...left];
  // "rows one to three. row four's tomorrow"
  if (lessOfIt(standing, items, said))
    return [...standing.map((s) => s.draft), ...restPlanned(state, standing)];
  const matters = mendMatters(state, standing, said, cue);
  if (matters) return matters;
  if (
    otherSide(standing, said) ||
    wrongLine(state, standing, items, said) ||
    otherAxis(state, standing, items, said) ||
    otherUse(standing, items, said) ||
    stillInHand(standing, said) ||
    swapRound(standing, items, said) ||
    itWasThis(state, standing, items) ||
    stillThere(standing, items) ||
    itIsThatOne(state, standing, said) ||
    numbersAgain(state, standing, said) ||
    amountAgain(standing, items, said) ||
    partOfIt(state, standing, said) ||
    endsAt(standing, items, said) ||
    forTheOne(standing, resolvePlaces(state, standing, items), said) ||
    restated(standing, items, said) ||
    deedAgain(state, standing, items, said) ||
    oneEndAgain(state, standing, items) ||
    stretchAgain(state, standing, items) ||
    placeHasNot(standing, items, said) ||
    placeNotDone(standing, items, said) ||
    moreThan(standing, items, said) ||
    foundOtherwise(state, standing, items, said) ||
    forPart(standing, items, said) ||
    addLeftOut(standing, items, said) ||
    clothToldLate(standing, items, said) ||
    clothForPlace(standing, items, said) ||
    mendWork(state, standing, items, said) ||
    tookMinutes(standing, items, said) ||
    (cue !== 'none' && otherChoice(standing, items))
  )
    return standing.map((s) => s.draft);
  items = resolvePlaces(state, standing, items);
  const apart = oneOfSeveral(state, standing, items, said, cue);
  if (apart) return apart;
  if (cue === 'weak' && deniesAtOnce(items)) cue = 'none';
  if (cue === 'none' && namesPlaceBesides(items, said)) cue = 'strong';
  if (
    cue !== 'strong' &&
    / (as well|too|also|another|one other|a second|same again|again|next) /.test(` ${words} `)
  )
    return undefined;
  if (
    cue === 'none' &&
    (movesFinding(standing, items, words) ||
      tellsStitch(state, standing, items) ||
      reachesLess(standing, items, said) ||
      measuresAgain(state, standing, items))
  )
    cue = 'strong';
  const wrong = wrongItems(items, standing);
  const work: Work = {
    state,
    standing,
    cue,
    words: ` ${words} `,
    wrong,
    used: new Set(),
    changed: false,
    told: new Set(),
  };
  const denied =
    wrong.size > 0 &&
    items.length <= 18 &&
    !(cue === 'none' && tellsAnotherDeed(state, standing)) &&
    [...wrong].some((x) => x.place?.rule !== 'place.the-other' && standsIn(standing, x, state));
  const units =
    items.length <= 10 &&
    items.some(
      (x, k) =>
        x.w === 'not' &&
        items
          .slice(k + 1, k + 3)
          .some(
            (y) =>
              Object.hasOwn(UNIT_WORDS, y.w) &&
              standing.some(({ was }) => 'unit' in was && was.unit === UNIT_WORDS[y.w]),
          ),
    );
  const plainly =
    denied ||
    units ||
    plainEnough(work, items) ||
    (items.length <= 20 && NOT_DONE.test(work.words) && !toldOfOthers(standing, items)) ||
    (items.length <= 14 && deniedFindings(work, items).length > 0);
  if (cue === 'none' && !plainly && !STRIKE_LOGGED.test(work.words)) return undefined;
  if (denied && cue !== 'strong') work.cue = 'strong';
  if (work.cue === 'weak' && items.length > 34) return undefined;
  if (cue !== 'strong' && tellsWork(work)) return undefined;
  if (strikeOut(work, items)) return work.standing.map((s) => s.draft);
  if (work.cue === 'none' && !plainly) return undefined;
  // "4-2 isn't done yet, actually": of what was told as done, that is not
  if (isPartUndone(work, items)) {
    notDone(work, items);
    if (work.changed) return work.standing.map((s) => s.draft);
  }
  const segments = segmentsOf(items, wrong);
  // "hold on, 3-3 has a hole": another place, another damage
  if (work.cue === 'weak' && segments.some((segment) => tellsAnew(work, segment))) return undefined;
  let carried: Item[] = [];
  for (const segment of segments) {
    carried = mendSegment(work, segment, carried);
  }
  leftOver(work, items);
  substitute(work, items);
  swapStuff(work, items);
  if (!work.changed) swapNumbers(work, items);
  if (items.length <= 16) {
    denyFindings(work, items);
    notDone(work, items);
  }
  if (!work.changed) return undefined;
  const extra = unconsumed(work, items);
  if (work.cue === 'none' && (extra.length || unexplained(work, items))) return undefined;
  if (work.cue === 'weak' && extra.some((d) => d.clause === 0 || extra.length > 1)) return undefined;
  const later = extra.filter(
    (d) => ((d.sentence > 0 || work.told.has(d)) && complete(d)) || (d.sentence > 0 && isOfItsOwn(work, d)),
  );
  return [...work.standing.map((s) => s.draft), ...later];
}

/** "sorry, 2-3. stopped at four", "make that 40. the binding's still open": of a kind of which nothing was told that could be mended. */
const isOfItsOwn = ({ standing }: Work, { entry: e }: Draft): boolean =>
  (e.kind === 'decision' || (e.kind === 'work' && (e.mark ?? e.start) !== undefined)) &&
  !standing.some(({ was }) => was.kind === e.kind);

/** What is left of a list of what was done, told as work to come. */
const restPlanned = (state: ReaderState, standing: Standing[]): Draft[] =>
  state.drafts.filter(
    ({ entry: e }) =>
      e.kind === 'treatment' &&
      e.state === 'planned' &&
      e.places?.length &&
      standing.some(
        ({ was }) =>
          was.kind === 'treatment' &&
          was.action === e.action &&
          e.places!.every((p) => was.places?.includes(p)),
      ),
  );

/** Applies one stretch; gives the items that later stretches without a subject of their own may lean on. */
function mendSegment(work: Work, segment: Segment, carried: Item[]): Item[] {
  if (work.changed && tellsAnew(work, segment)) return carried;
  const items = segment.items.filter((x) => !work.wrong.has(x));
  const own = items.some((x) => work.standing.some((s) => anchored(s, [x], new Set()) > 1));
  const lean = own ? items : [...carried, ...items];
  const placed = placeItems(work, items);
  const anchorPlaces = mendPlaces(work, segment, items, placed);
  mendStitch(work, segment, items, lean, anchorPlaces ? placed : []);
  mendTimes(work, segment, items);
  mendNumbers(work, segment, items, lean);
  return own ? items : carried;
}

/** Entries that the note tells beside the mending. */
function unconsumed(work: Work, _items: Item[]): Draft[] {
  return work.state.drafts.filter((d) => {
    const e = d.entry;
    const told = d.origins['entry'];
    const within = (x: Item): boolean =>
      told !== undefined && x.token.from >= told.from && x.token.from < told.to;
    if ([...work.used, ...work.wrong].some(within)) return false;
    if (e.kind === 'remark' || (e.kind === 'decision' && !(d.sentence > 0 && isOfItsOwn(work, d))))
      return false;
    if (e.kind === 'treatment' && e.action === undefined && NOT_DONE.test(work.words)) return false;
    return !work.standing.some(({ was, draft }) =>
      [was, draft.entry].some(
        (x) =>
          x.kind === e.kind &&
          ((e.kind === 'condition' &&
            x.kind === 'condition' &&
            x.finding === e.finding &&
            (d.placed !== 'said' || sharesPlace(x, e))) ||
            (e.kind === 'treatment' &&
              x.kind === 'treatment' &&
              x.action === e.action &&
              (d.placed !== 'said' || sharesPlace(x, e))) ||
            (e.kind === 'material' &&
              x.kind === 'material' &&
              x.material === e.material &&
              e.quantity === undefined) ||
            (e.kind === 'measurement' && x.kind === 'measurement' && x.of === e.of) ||
            (e.kind === 'work' && x.kind === 'work')),
      ),
    );
  });
}
