import type { Action, Finding, RemovedObject, Stitch, TreatmentState } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { mendedCloth } from '../places/cloth-worked-on.ts';
import { type ClausePlaces, placesOfClause } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { bareMinutes } from './bare-minutes.ts';
import { isTreatment } from './is-treatment.ts';
import { NO_SECOND, oneMoreSomewhere } from './one-more-somewhere.ts';
import { stateAgain } from './state-again.ts';
import type { stitchOf } from './stitch-of.ts';
import { toldBeside } from './told-beside.ts';

/** "the two after that stained, next same again": the same is found at the next block, where nothing has been done in this note. */
const foundAlong = (state: ReaderState, placed: ClausePlaces, last: Draft): boolean =>
  placed.kind === 'specific' &&
  placed.places.length > 0 &&
  !state.drafts.some(isTreatment) &&
  last.entry.kind === 'condition' &&
  !placed.places.some((p) => (last.entry as { places?: string[] }).places?.includes(p));

/** The damage last told, found elsewhere. */
function foundAt(
  state: ReaderState,
  v: ClauseView,
  finding: Finding,
  rule: string,
  places: string[],
  said: Item[],
): void {
  state.drafts.push(
    makeDraft(
      'condition',
      v,
      { finding: [finding, rule, undefined, 'implied'], places: [places, 'place.said', said] },
      places.length ? 'said' : 'none',
    ),
  );
}

/** "right 4-3 again": back to what was last spoken of. */
const isReturn = (state: ReaderState, clause: Clause, placed: ClausePlaces): boolean =>
  placed.places.length > 0 &&
  clause.items.every(
    (x) => x.place || /^(right|ok|okay|so|now|back|to|on|at|the|well|and|again)$/.test(x.w),
  ) &&
  placed.places.every((p) => state.memory.treatment?.places.includes(p));

/** "same on the next two", "the one below the same", "ditto 3-4", "and the next two rows too". */
export function sameAgain(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  placed: ClausePlaces,
  stitch: ReturnType<typeof stitchOf>,
): void {
  const words = ` ${clause.items.map((x) => x.w).join(' ')} `;
  const short = clause.items.length <= 9;
  const same =
    / (same|ditto|likewise|as is|as are|identical|as before|similarly|so is|so are|so has|so does|so did|so 's|just as bad|no better|as bad) /.test(
      words,
    ) ||
    (short &&
      / (as well|too|also|again) /.test(words) &&
      !isReturn(state, clause, placed) &&
      // "all of the top row needs looking at again"
      !/ (?:look|looking|looked|check|checking|checked|see|seeing|think|thinking|start|starting|try|go|going|measure|count|back|come) (?:\S+ ){0,3}again /.test(
        words,
      ) &&
      (placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt'))) ||
    ((state.clauses.length === 1 ||
      state.clauses.every((c) => c.items.every((x) => x.place || /^(,|and|then|the|&|now)$/.test(x.w)))) &&
      short &&
      // "and the one on 3-4", "and the green twill ones"
      (placed.kind === 'specific' || (placed.kind === 'none' && clause.items.some((x) => x.fabric))) &&
      (/ (and|also|plus|then) /.test(words.slice(0, 10)) || /^(and|then)$/.test(clause.joint)) &&
      clause.items.every(
        (x) =>
          x.place ||
          x.fabric ||
          // "and 2-5, 10 min"
          (x.duration && state.memory.lastKind === 'treatment') ||
          /^(and|also|plus|the|,|in|on|at|over|onto|across|along|then|now|&|one|ones|that|those|blocks?|pieces?|all|for|matter)$/.test(
            x.w,
          ),
      )) ||
    /^ (" |'' )/.test(words) ||
    lessSo(state, clause, placed) ||
    / (?:has|had) (?:one|another) $/.test(words) ||
    otherStitch(state, clause, placed, stitch);
  const last = state.drafts.findLast((d) => d.entry.kind === 'treatment' || d.entry.kind === 'condition');
  if (oneMore(state, v, words, placed, last) || oneMoreSomewhere(state, v, words, placed, last)) return;
  // "same again, 5-1"
  if (same && placed.kind === 'none') placed = placesBehind(state, clause) ?? placed;
  const cloth = same && placed.kind === 'none' ? mendedCloth(clause.items, state) : undefined;
  if (
    !same ||
    (!placed.places.length &&
      !cloth &&
      !placed.outside &&
      !SAME_DONE.test(words) &&
      !/ (same again|ditto|likewise|as before|same (way|deal|treatment|thing|story|procedure|process|method|fix|repair|job|mend|remedy)) /.test(
        words,
      ))
  )
    return;
  if (
    !SAME_DONE.test(words) &&
    / same (thread|stitch|fabric|cloth|colou?r|needle|yarn|as before thread|wool) /.test(words) &&
    (!placed.places.length ||
      // "one more, the same thread, and that one only took ten minutes"
      (/ (?:that|this) one (?:only |just )?took /.test(words) &&
        state.drafts.some((d) => isTreatment(d) && d.sentence === v.sentence) &&
        placed.items.every((x) => x.place!.rule === 'place.that-one' || x.place!.rule === 'place.it')))
  )
    return;
  // "2-1 is the same stripe"
  if (
    / (?:is|are|'s|in) the same (?:stripe|print|check|plaid|cloth|fabric|stuff|colou?r|pattern|piece|material|cotton|silk|wool) /.test(
      words,
    )
  )
    return;
  // "done, same stitch, seventy minutes": how, of what was just told
  if (
    last?.entry.kind === 'treatment' &&
    last.sentence === v.sentence &&
    / same (?:stitch|sts?) /.test(words) &&
    !placed.places.length
  )
    return;
  if (hasOneToo(state, v, words, placed, last)) return;
  // "block to the right of it: same fix": where the place was named before the colon
  const topical = state.topic?.sentence === v.sentence && placed.kind === 'none' ? state.topic.places : [];
  const places = placed.places.length ? placed.places : (cloth?.places ?? topical);
  if (last?.entry.kind === 'condition' && last.sentence === v.sentence && SAME_DONE.test(words)) {
    curedAlike(state, v, last.entry.places ?? []);
    return;
  }
  // "(1-5 frayed, oversewn.) 2-5 same problem": found there, and not mended
  if (SAME_TROUBLE.test(words)) {
    const found = state.drafts.findLast((d) => d.entry.kind === 'condition')?.entry ?? state.memory.condition;
    if (found && 'finding' in found) foundAt(state, v, found.finding, 'condition.same', places, placed.items);
    return;
  }
  if (
    last &&
    last.entry.kind === 'condition' &&
    !(/ same again /.test(words) && !foundAlong(state, placed, last)) &&
    !/ (same treatment|same deal|same fix|same repair|done the same|did the same) /.test(words) &&
    !DONE_SAME.test(words)
  ) {
    foundAt(state, v, last.entry.finding, 'condition.same', places, placed.items);
    return;
  }
  const from = last?.entry.kind === 'treatment' ? last.entry : undefined;
  const memory = state.memory;
  if (
    !from &&
    memory.lastKind === 'condition' &&
    memory.condition &&
    (!/ (same again|same treatment|same fix|same repair|did|done|i) /.test(words) ||
      (!memory.treatment && placed.items.every((x) => x.place!.how === 'said') && / same again /.test(words)))
  ) {
    foundAt(state, v, memory.condition.finding, 'condition.same', places, placed.items);
    return;
  }
  const source = from ?? (cloth && doneToCloth(state, cloth)) ?? memory.treatment;
  if (!source?.action) return;
  const say = stitch?.stitch ?? source.stitch;
  const bare = bareMinutes(state, clause);
  // "same for r3 b1", after two ways in question, or after a mend that was two deeds: both
  for (const other of toldBeside(state, source, last))
    state.drafts.push(
      makeDraft(
        'treatment',
        v,
        {
          action: [other.action, 'treatment.same-again', undefined, 'implied'],
          state: [
            stateAgain(words, clause.asked, source.state),
            'treatment.same-again',
            undefined,
            'implied',
          ],
          ...(other.object ? { object: [other.object, 'treatment.same-again', undefined, 'implied'] } : {}),
          ...(other.stitch ? { stitch: [other.stitch, 'treatment.same-again', undefined, 'implied'] } : {}),
          places: [places, 'place.said', placed.items],
        },
        places.length ? 'said' : 'none',
      ),
    );
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [source.action, 'treatment.same-again', undefined, 'implied'],
        state: [stateAgain(words, clause.asked, source.state), 'treatment.same-again', undefined, 'implied'],
        ...(source.object ? { object: [source.object, 'treatment.same-again', undefined, 'implied'] } : {}),
        places: [places, 'place.said', placed.items],
        ...(say ? { stitch: [say, 'treatment.same-again', stitch?.item, stitch ? 'said' : 'implied'] } : {}),
        ...(bare ? { minutes: [bare.quantity!.value, 'time.bare-minutes', bare] } : {}),
      },
      places.length ? 'said' : 'none',
    ),
  );
}

/** The places that stand alone behind the clause, after a comma. */
function placesBehind(state: ReaderState, clause: Clause): ClausePlaces | undefined {
  const next = state.clauses[state.clauses.indexOf(clause) + 1];
  if (!next || next.sentence !== clause.sentence) return undefined;
  if (
    !next.items.every((x) => x.place || /^(and|&|only|just|this time|,|the|in|on|for|to|now|too)$/.test(x.w))
  )
    return undefined;
  const placed = placesOfClause(next.items);
  return placed.kind === 'specific' ? placed : undefined;
}

/** "did it the very same way", "closed that one the same" */
const DONE_SAME =
  / (?:did|done|treated|closed|fixed|mended) (?:it|that|them|those|this|that one)(?: up)? (?:in )?(?:just )?the (?:very |exact )?same /;

/** "(the bottom border is stained its whole length,) and the left one just at the bottom", "and 3-3 a little", "row two less so". */
const lessSo = (state: ReaderState, clause: Clause, placed: ClausePlaces): boolean => {
  const last = state.drafts.at(-1);
  return (
    placed.kind === 'specific' &&
    /^(and|,|but|&)$/.test(clause.joint) &&
    last?.entry.kind === 'condition' &&
    last.sentence === clause.sentence &&
    clause.items.length > 1 &&
    clause.items.every((x) => x.place || EXTENT.test(x.w)) &&
    clause.items.some((x) => !x.place && HOW_MUCH.test(x.w))
  );
};
/** "(resewed 2-1 by machine.) 2-3 by hand", "and the last two, zigzag": the deed goes on at another place, with a stitch of its own. */
const otherStitch = (
  state: ReaderState,
  clause: Clause,
  placed: ClausePlaces,
  stitch: ReturnType<typeof stitchOf>,
): boolean => {
  const { treatment, lastKind } = state.memory;
  return (
    stitch !== undefined &&
    state.clauses.length === 1 &&
    !state.drafts.length &&
    lastKind === 'treatment' &&
    treatment?.stitch !== undefined &&
    treatment.stitch !== stitch.stitch &&
    /^(done|doing)$/.test(treatment.state) &&
    placed.kind === 'specific' &&
    !placed.places.some((p) => treatment.places.includes(p)) &&
    clause.items.every(
      (x) =>
        x.place ||
        x === stitch.item ||
        x.fabric ||
        /^(and|&|but|the|by|in|with|on|a|,|one|ones|then|this|time|though|that|those|blocks?|stitch)$/.test(
          x.w,
        ),
    )
  );
};
const HOW_MUCH =
  /^(just|only|less|more|worse|slightly|little|bit|badly|mostly|partly|mainly|especially|worst)$/;
const EXTENT =
  /^(the|just|only|at|in|on|along|a|bit|little|slightly|less|more|worse|so|badly|mostly|partly|mainly|especially|worst|top|bottom|left|right|end|ends|edge|edges|corner|corners|middle|near|towards|one|ones|of|all|it|too|,|places|though)$/;

/** "and one in 3-4", "another on the one below", "two more in row six", "a smaller one in 2-4": the damage last told, found there as well. */
const ONE_MORE =
  /^ (?:(?:and|then|also|plus|oh|,|there 's|there is|there are|with|i see|found|got) )*(?:(?:one|another|a second|a third|a fourth|two|three|four|a couple|a few|some) (?:more|others?|like it|of them|just like it|the same)?|a (?:smaller|bigger|little|tiny|small|big|longer|shorter|fainter|similar) one|another (?:one|two|three))(?: more| like it| of them)* ?(?:right )?(?:in|on|at|along|near|by|down|over|under|up|round|around|next to|beside|below|above|just below|just above) /;

function oneMore(
  state: ReaderState,
  v: ClauseView,
  words: string,
  placed: ClausePlaces,
  last: Draft | undefined,
): boolean {
  if (!/^(specific|general)$/.test(placed.kind) || placed.places[0] === 'quilt' || !ONE_MORE.test(words))
    return false;
  // "three in the middle of the bottom row: musty": the blocks, and what is told of them comes behind
  if (v.items[0]?.place && v.items[0].place.places.length > 1 && / (?:in|at) /.test(v.items[0].w))
    return false;
  if (
    v.items.some(
      (x) =>
        x.finding ||
        x.fail ||
        x.stitch ||
        x.task ||
        x.duration ||
        x.clock ||
        (x.action && !x.place) ||
        x.cost ||
        x.quantity?.unit,
    )
  )
    return false;
  const finding =
    last?.entry.kind === 'condition'
      ? last.entry.finding
      : !last && state.memory.lastKind === 'condition'
        ? state.memory.condition?.finding
        : THERE_IS.test(words)
          ? mendedLast(state, v, last)
          : undefined;
  if (!finding || NO_SECOND.test(finding)) return false;
  foundAt(state, v, finding, 'condition.one-more', placed.places, placed.items);
  return true;
}

const THERE_IS = /^ (?:(?:and|but|so|oh|then|,) )*(?:there 's|there is|there are|i (?:see|found)) /;

/** "darned the hole in 1-1. There's another in 2-4": the damage that was mended there. */
function mendedLast(state: ReaderState, v: ClauseView, last: Draft | undefined): Finding | undefined {
  if (!last) return curedLast(state) ?? state.memory.condition?.finding;
  const told = state.clauses
    .slice(0, v.index)
    .flatMap((c) => c.items)
    .findLast((x) => x.finding);
  return told?.finding;
}

/** "three four had one too", "the next block has one as well": the damage last told, found there too. */
function hasOneToo(
  state: ReaderState,
  v: ClauseView,
  words: string,
  placed: ClausePlaces,
  last: Draft | undefined,
): boolean {
  if (
    placed.kind !== 'specific' ||
    !/ (?:had|has|have|got) (?:one|another|some|them) (?:too|as well|also) | (?:has|had) (?:one|another) $/.test(
      words,
    )
  )
    return false;
  const finding =
    last?.entry.kind === 'condition'
      ? last.entry.finding
      : last
        ? undefined
        : (curedLast(state) ?? state.memory.condition?.finding);
  // "got a patch on", "the next one got one too": what was done to it
  if (!finding || (/ got /.test(words) && !last && state.memory.lastKind === 'treatment')) return false;
  foundAt(state, v, finding, 'condition.same', placed.places, placed.items);
  return true;
}

/** "5-3's tear I sewed up", then "three four had one too": the damage of the place that was worked on last. */
function curedLast({ memory }: ReaderState): Finding | undefined {
  if (memory.lastKind !== 'treatment') return undefined;
  return memory.mentions?.findLast((m) => m.finding && memory.focus.some((p) => m.places.includes(p)))
    ?.finding;
}

/** "the other two homespun ones likewise": what was last done to blocks of that cloth alone. */
function doneToCloth(
  state: ReaderState,
  cloth: { item: Item },
): { action: Action; state: TreatmentState; object?: RemovedObject; stitch?: Stitch } | undefined {
  const { treatment, mentions } = state.memory;
  const blocks = (cloth.item.fabric?.names ?? []).flatMap((n) => state.fabrics.blocks[n] ?? []);
  const done = mentions?.findLast((m) => m.action && m.places.every((p) => blocks.includes(p)));
  if (!done?.action || !treatment || treatment.action === done.action) return undefined;
  return { action: done.action, state: 'done', ...(done.object ? { object: done.object } : {}) };
}

const SAME_TROUBLE =
  / same (?:problem|trouble|damage|issue|fault|wear|complaint|condition|thing wrong|kind of (?:damage|wear|hole|tear|stain)) /;

/** "(1-2/2-2 was open too), same stitch": nothing but that it was done the same way. */
const SAME_DONE = /^ (?:the )?same (?:st|stitch|way|again|treatment|deal|fix|cure)(?: \.| again)* $/;

/** What was just found is treated as the damage before it was. */
function curedAlike(state: ReaderState, v: ClauseView, places: string[]): void {
  const source = state.drafts.findLast(isTreatment)?.entry ?? state.memory.treatment;
  if (!source?.action || !places.length) return;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [source.action, 'treatment.same-again', undefined, 'implied'],
        state: [source.state, 'treatment.same-again', undefined, 'implied'],
        places: [[...places], 'place.carried', undefined, 'implied'],
        ...(source.stitch ? { stitch: [source.stitch, 'treatment.same-again', undefined, 'implied'] } : {}),
      },
      'said',
    ),
  );
}
