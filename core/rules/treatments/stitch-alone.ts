import type { TreatmentState } from '../../../shared/vocabulary.ts';
import { type ClauseView, view } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { carriedPlaces } from '../places/carried-places.ts';
import { type ClausePlaces, placesOfClause } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';
import { isForGood, type stitchOf, TAKES_STITCH } from './stitch-of.ts';

export function fastening(
  state: ReaderState,
  v: ClauseView,
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
  placed: ClausePlaces,
): void {
  const last = state.drafts
    .filter(isTreatment)
    .filter((d) => d.sentence >= v.sentence - 1)
    // "gonna patch 4-5, forget the darning. denim, blanket st": of the one that is to be
    .filter((d) => d.entry.state !== 'dropped')
    .at(-1);
  // "…, the seam got a ladder stitch", "…, seam backstitch"
  const at = v.items.indexOf(stitch.item);
  if (
    placed.kind === 'specific' &&
    !stitch.item.weakStitch &&
    v.items.slice(0, at).some((x) => x.seam) &&
    v.items.slice(0, at).every((x) => x.seam || x.place || SEAM_HAS.test(x.w))
  )
    state.drafts.push(sewnShut(v, placed.places, stitch));
  if (placed.kind === 'specific') return;
  // "the seam from last night: backstitch", "that seam: whipst., 12 min"
  const seam = placed.kind === 'none' ? seamNamed(state, v) : undefined;
  if (seam?.length) {
    state.drafts.push(sewnShut(v, seam, stitch));
    return;
  }
  if (last && isFusedOn(state, last) && last.entry.places && stitch.stitch === 'zigzag') {
    // "going to put interfacing behind it and then zigzag over the tear": to be done, as the other is
    const goesOn = last.sentence === v.sentence && last.entry.state !== 'doing';
    state.drafts.push(sewnShut(v, last.entry.places, stitch, goesOn ? last.entry.state : undefined));
    return;
  }
  if (
    last &&
    // "the middle one as well but running stitch"
    (!last.entry.stitch ||
      last.origins['stitch']?.rule === 'treatment.same-again' ||
      // "machined shut, straight stitch": the most particular one
      (/^(hand|machine)$/.test(last.entry.stitch) && !/^(hand|machine)$/.test(stitch.stitch))) &&
    last.entry.action &&
    TAKES_STITCH.has(last.entry.action) &&
    !(last.entry.action === 'baste' && isForGood(stitch.stitch))
  ) {
    last.entry.stitch = stitch.stitch;
    last.origins['stitch'] = {
      rule: `stitch.${stitch.stitch}`,
      how: 'said',
      from: stitch.item.token.from,
      to: stitch.item.end ?? stitch.item.token.to,
    };
    return;
  }
  const found = state.drafts.at(-1);
  if (
    !last &&
    found?.entry.kind === 'condition' &&
    ['split-seam', 'tear', 'broken-stitching'].includes(found.entry.finding) &&
    found.entry.places?.length
  )
    state.drafts.push(sewnShut(v, found.entry.places, stitch));
}

const SEAM_HAS =
  /^(the|that|those|its|and|&|\+|\/|,|:|-|to|wants?|needs?|has|have|had|got|'s|now|a|some|with|in|on|at|of|between|done|by)$/;

/** A seam or tear closed, told by the stitch alone. */
const sewnShut = (
  v: ClauseView,
  places: string[],
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
  state?: TreatmentState,
): Draft =>
  makeDraft(
    'treatment',
    v,
    {
      action: ['resew', 'treatment.stitch-alone', stitch.item],
      // "both want ladder stitch"
      state: [
        state ?? (v.items.some((x) => /^(?:wants?|needs?|to|will|'ll)$/.test(x.w)) ? 'planned' : 'done'),
        'treatment.stitch-alone',
        stitch.item,
      ],
      places: [places, 'place.carried', undefined, 'implied'],
      stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item],
    },
    'carried',
  );

/** Where the seam is that was named, with nothing said of it, just before in the same sentence. */
function seamNamed(state: ReaderState, v: { index: number; sentence: number }): string[] | undefined {
  const before = state.clauses[v.index - 1];
  if (!before || before.sentence !== v.sentence || !before.items.some((x) => x.seam)) return undefined;
  if (state.drafts.some((d) => d.clause === v.index - 1)) return undefined;
  if (state.topic?.sentence === v.sentence) return state.topic.places;
  const placed = placesOfClause(before.items);
  if (placed.places.length) return placed.places;
  return carriedPlaces(state, view(before, v.index - 1), undefined, placed) ?? state.memory.focus;
}

/** A stitch told behind the damage it closes, in one clause: that is the treatment. */
export function closedAtOnce(
  state: ReaderState,
  v: ClauseView,
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
): Draft | undefined {
  const found = state.drafts.findLast((d) => d.clause === v.index);
  if (found?.entry.kind !== 'condition' || !found.entry.places?.length) return undefined;
  if (!['split-seam', 'tear', 'broken-stitching'].includes(found.entry.finding)) return undefined;
  // "netted because of a tear, running stitch": the net was sewn so, for that reason
  const cured = state.drafts.some(
    (d) => isTreatment(d) && d.clause === v.index - 1 && d.sentence === v.sentence && !d.entry.stitch,
  );
  if (cured && /^(?:because|as|since|for|cos)$/.test(state.clauses[v.index]!.joint)) return undefined;
  const at = v.items.indexOf(stitch.item);
  const damage = v.items.findIndex((x) => x.finding || x.fail);
  // "a split one between 6-1 and 7-1, did that by hand"
  const didIt = DID_IT.test(wordsBetween(v.items, damage + 1, at));
  if (!didIt && !/^(,|-|--|:|>|->|=>|=|→)$/.test(v.items[at - 1]?.w ?? '')) return undefined;
  if (damage < 0 || damage > at || v.items.slice(at + 1).some((x) => x.finding || x.fail)) return undefined;
  return sewnShut(v, found.entry.places, stitch);
}

const DID_IT =
  / (?:,|and|so|--|-) (?:so )?(?:i |we |i 've |'ve )?(?:just )?(?:did|done) (?:that|it|this|that one|this one|that bit)(?: up| shut| as well| too)?(?: by| in| with| on the| with a| in a)? $/;

/** Ironed on, so that a zigzag told with it sews the tear over, and fastens nothing. */
const isFusedOn = (state: ReaderState, { entry: e, clause }: Draft): boolean =>
  e.kind === 'treatment' &&
  e.action === 'stabilize' &&
  (state.clauses[clause]?.items.some((x) => x.material === 'interfacing') ?? false);

/** "fusible on the back of it, zigzag by machine": fused, and then sewn over. */
export function sewnOver(
  state: ReaderState,
  v: ClauseView,
  made: Draft[],
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
): Draft | undefined {
  const [only] = made;
  if (made.length !== 1 || stitch.stitch !== 'zigzag' || !isFusedOn(state, only!)) return undefined;
  const e = only!.entry;
  if (
    e.kind !== 'treatment' ||
    !/^(?:done|planned|considering)$/.test(e.state ?? '') ||
    e.stitch !== 'zigzag' ||
    !e.places?.length
  )
    return undefined;
  const at = v.items.indexOf(stitch.item);
  if (!/^(,|and|then|&|\+)$/.test(v.items[at - 1]?.w ?? '')) return undefined;
  delete e.stitch;
  delete only!.origins['stitch'];
  return sewnShut(v, e.places, stitch, e.state);
}
