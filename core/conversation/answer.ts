import type { Entry } from '../../shared/entry.ts';
import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { findDays } from '../rules/times/find-day.ts';
import { answerAction } from './answers/answer-action.ts';
import { answerFabric } from './answers/answer-fabric.ts';
import { answerMaterial } from './answers/answer-material.ts';
import { answerPlace } from './answers/answer-place.ts';
import { answerQuantity } from './answers/answer-quantity.ts';
import { answerTime } from './answers/answer-time.ts';
import type { Answering } from './answers/answering.ts';
import { cueOf } from './cues.ts';
import { correct } from './mend/correct.ts';
import { complete } from './mend/items.ts';
import { type LastNote, placesOf, put, standingOf } from './standing.ts';

/**
 * Reads a note as the answer to the question that the last note left open. Gives the last note's whole set with the answer put
 * in, and what is told beside it; undefined where the note is no answer, but plainly tells something new.
 */
export function answer(
  state: ReaderState,
  last: LastNote,
  items: Item[],
  words: string,
): Draft[] | undefined {
  if (last.ask === null) return undefined;
  const stop = items.findIndex((x) => /^[.;!?\n]$/.test(x.w) && x.token.kind === 'mark');
  const a: Answering = {
    state,
    last,
    standing: standingOf(last),
    items,
    head: stop > 0 ? items.slice(0, stop) : items,
    words: ` ${words} `,
    day:
      last.ask === 'time'
        ? (findDays(words, state.local).find((d) => !d.vague) ?? findDays(last.said, state.local)[0])
        : undefined,
    cue: cueOf(words),
    taken: new Set(),
    used: new Set(),
  };
  if (a.cue !== 'strong' && (/ (same again|another one|as well|next one) /.test(a.words) || tellsNew(a)))
    return undefined;
  const answered = {
    place: answerPlace,
    action: answerAction,
    fabric: answerFabric,
    quantity: answerQuantity,
    time: answerTime,
    material: answerMaterial,
  }[last.ask](a);
  if (!answered) return undefined;
  // what else it says of the same entries: "the poplin, and machine zigzag round both"
  // (and "one" of "the gingham one in row two" is no number)
  const rest = a.head.filter((x, k) => !a.used.has(x) && !(x.w === 'one' && a.head[k - 1]?.fabric));
  const mended =
    last.ask === 'action' ? undefined : correct({ ...state, drafts: [] }, a.standing, rest, words, 'weak');
  const drafts = foundTogether(mended ?? a.standing.map((s) => s.draft));
  return [...drafts, ...beside(a, drafts)];
}

/** "2-4 is torn and there's another somewhere", and then where: the same finding at both is one entry. */
const foundTogether = (drafts: Draft[]): Draft[] =>
  drafts.filter((d, k) => {
    const e = d.entry;
    if (e.kind !== 'condition' || d.origins['finding']?.rule !== 'condition.one-more' || !e.places?.length)
      return true;
    const twin = drafts
      .slice(0, k)
      .find(({ entry: o }) => o.kind === 'condition' && o.finding === e.finding && placesOf(o).length > 0);
    if (!twin) return true;
    put(twin, 'places', [...new Set([...placesOf(twin.entry), ...e.places])], 'place.answered', []);
    return false;
  });

/** Something else than what was asked: "different thing", "what colour's the binding to be", a list to buy, a deed done "too". */
function tellsNew(a: Answering): boolean {
  // "open: tie or quilt?", "backing: patch or replace", where something else was asked: a heading, and what is told under it
  if (
    a.state.drafts.some((d) => d.entry.kind !== 'remark' && d.entry.kind !== 'material') &&
    (/^ (?:open|undecided|tbd|pending|to decide|still open|decisions?) (?::|-|--) /.test(a.words) ||
      (a.cue === 'none' && / or /.test(a.words) && /^ (?:the )?\S+ (?::|--) /.test(a.words)))
  )
    return true;
  // "hand or machine quilting: open", where it was asked what was done to 2-3: matters, told as open or settled
  if (
    /^(?:action|place|quantity)$/.test(a.last.ask ?? '') &&
    a.state.drafts.some((d) => d.entry.kind === 'decision') &&
    !a.state.drafts.some(({ entry: e }) => e.kind === 'treatment' || e.kind === 'condition') &&
    / (?:open|undecided|unsettled|settled|decided|agreed|fixed|final) /.test(a.words)
  )
    return true;
  if (
    /^ (?:um |uh |er |oh |and |so |now |, )*(?:(?:a )?(?:different|other|another|new) (?:thing|matter|one|job)|to (?:get|buy)|shopping|do i|shall i|should i|beats me|no idea (?:if|whether))\b/.test(
      a.words,
    ) ||
    / (?:do|shall|should) i (?:tie|quilt|wash|bind|use|go|leave|patch) .* or | what colou?r /.test(a.words)
  )
    return true;
  const deeds = a.state.drafts.filter(({ entry: e }) => e.kind === 'treatment' || e.kind === 'condition');
  // "and the binding's worn", where it was asked which block is
  if (
    /^ (?:oh |, )*(?:and|also|plus) /.test(a.words) &&
    deeds.some((d) => d.placed === 'said') &&
    a.last.ask === 'place'
  )
    return true;
  // "5-2. also 5-3" goes on with the answer
  const deedSaid = a.items.some((x) => x.finding || x.action || x.stitch);
  if (
    / (?:too|also) /.test(a.words) &&
    (deedSaid || a.last.ask !== 'place') &&
    (deeds.length > 0 || / got (?:one|it|some) too /.test(a.words))
  )
    return true;
  // "Batting to buy, so many yards": goods wanted, which no place and no deed asks for
  const goods = a.state.drafts.filter(
    ({ entry: e }) => e.kind === 'material' && (e.use === 'needed' || e.use === 'bought'),
  );
  // "spot cleaned. need more detergent": the deed that was asked for, and goods behind it
  if (a.last.ask === 'action' && a.head.some((x) => x.action?.form === 'past')) return false;
  return (
    goods.length > 0 && /^(place|action)$/.test(a.last.ask ?? '') && !deeds.some((d) => d.placed === 'said')
  );
}

/** Entries told along with the answer. A finding without a place of its own is where the answer is. */
function beside(a: Answering, drafts: Draft[]): Draft[] {
  const out: Draft[] = [];
  for (const d of a.state.drafts) {
    if (a.taken.has(d) || d.entry.kind === 'remark') continue;
    const e = d.entry;
    // "it was binding", asked of what: the stuff, and no binding that goes on
    if (
      a.last.ask === 'material' &&
      e.kind === 'treatment' &&
      e.action === 'bind' &&
      e.state === 'doing' &&
      a.items.length <= 6
    )
      continue;
    if (drafts.some((x) => repeats(x.entry, e))) continue;
    // "R edge, 2 in long": how long the tear is, and no length of the quilt
    if (
      a.last.ask === 'place' &&
      e.kind === 'measurement' &&
      /^(?:width|length)$/.test(e.of) &&
      d.placed !== 'said' &&
      drafts.some((x) => x.entry.kind === 'condition')
    )
      continue;
    // "the top left one, and I used 30 cm": of the one stuff that was told without an amount
    if (e.kind === 'material' && e.material === undefined && e.quantity !== undefined) {
      const [bare, more] = drafts.filter(
        ({ entry: x }) => x.kind === 'material' && x.use === e.use && x.quantity === undefined && x.material,
      );
      if (bare && !more) {
        put(bare, 'quantity', e.quantity, 'answer.amount', []);
        if (e.unit) put(bare, 'unit', e.unit, 'answer.amount', []);
        continue;
      }
    }
    // "b4, a moth hole", after a hole
    const hole = e.kind === 'condition' && e.finding === 'insect-damage' && d.placed !== 'said';
    const known = hole && drafts.find((x) => x.entry.kind === 'condition' && x.entry.finding === 'hole');
    if (known) {
      put(known, 'finding', 'insect-damage', 'answer.finding', []);
      continue;
    }
    // "one-five, and now that I look it isn't a hole, it's a tear"
    const denied =
      e.kind === 'condition' &&
      drafts.find(
        ({ entry: x }) => x.kind === 'condition' && x.finding !== e.finding && denies(a.items, x.finding),
      );
    if (denied && e.kind === 'condition') {
      put(denied, 'finding', e.finding, 'answer.finding', []);
      continue;
    }
    if (e.kind === 'condition') {
      if (!placesOf(e).length) {
        const at = drafts.find((x) => placesOf(x.entry).length);
        if (!at) continue;
        put(d, 'places', [...placesOf(at.entry)], 'place.answered', []);
      }
      out.push(d);
    } else if ((complete(d) || standsBeside(a, d)) && !(e.kind === 'treatment' && !e.action)) out.push(d);
  }
  return out;
}

/** "tied, 3 in apart", "patched them. binding still open, stopped at four": what tells by itself of what it is, and answers nothing. */
const standsBeside = ({ last, words }: Answering, { entry: e }: Draft): boolean =>
  // "it was 2-3, and I used a grey thread for it"
  (e.kind === 'material' &&
    e.use === 'used' &&
    e.material !== undefined &&
    last.ask === 'place' &&
    / (?:i|we|and|,) (?:\w+ )?(?:used|did it with|did it in) /.test(words)) ||
  (e.kind === 'decision' && !/^(?:material|fabric)$/.test(last.ask ?? '')) ||
  (e.kind === 'work' && last.ask !== 'time' && (e.mark ?? e.start ?? e.end) !== undefined) ||
  (e.kind === 'measurement' &&
    e.value !== undefined &&
    last.ask !== 'quantity' &&
    /^(?:tie-spacing|tail|seam|strip|overhang|border|block)$/.test(e.of));

/** "it isn't a hole", "no hole, just thin": said of that finding. */
const denies = (items: Item[], finding: string): boolean =>
  items.some(
    (x, k) =>
      x.finding === finding &&
      items.slice(Math.max(0, k - 3), k).some((y) => /^(?:not|n't|no|never)$/.test(y.w)),
  );

const repeats = (x: Entry, e: Entry): boolean =>
  x.kind === e.kind &&
  ((x.kind === 'condition' && e.kind === 'condition' && x.finding === e.finding) ||
    (x.kind === 'treatment' && e.kind === 'treatment' && x.action === e.action) ||
    (x.kind === 'material' &&
      e.kind === 'material' &&
      x.material === e.material &&
      (e.quantity === undefined || e.quantity === x.quantity)) ||
    (x.kind === 'measurement' && e.kind === 'measurement' && x.of === e.of) ||
    (x.kind === 'work' && e.kind === 'work'));
