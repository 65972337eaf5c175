import { START_PHRASES, STOP_PHRASES } from '../../lexicon/work-marks.ts';
import { PhraseTrie } from '../../text/phrase-trie.ts';
import type { Token } from '../../text/tokenise.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { begunVerb } from './begun-verb.ts';
import { splitMark } from './split-mark.ts';
import type { Named } from './task-near.ts';
import { hasObject, isLight, isWorkedOn } from './work-items.ts';

const MARK_PHRASES = new PhraseTrie<'start' | 'stop'>();
for (const p of START_PHRASES) MARK_PHRASES.add(p, 'start');
for (const p of STOP_PHRASES) MARK_PHRASES.add(p, 'stop');

export type Mark = {
  at: number;
  end: number;
  mark: 'start' | 'stop';
  word: string;
  /** The kind of work, where the words of the mark itself name it. */
  task?: Named;
};

/** Words for starting and stopping in the sentence, in order. */
export function marksOf(items: Item[]): Mark[] {
  const out: Mark[] = [];
  // an item can be several words: "sat down" may have been read as one
  const words: { w: string }[] = [];
  const first: number[] = [];
  const itemAt: number[] = [];
  items.forEach((x, k) => {
    first.push(words.length);
    // "finished by two", which may be a day named for the work as well
    const said = x.topic && items[k + 1]?.clock ? x.w.replace(/ by$/, '') : x.w;
    for (const word of said.split(' ')) {
      // "backing up" is "packing up" where the ear may have slipped
      const packing = word === 'backing' && x.token.heard && /^(it|up|in)$/.test(w(items, k + 1));
      words.push({ w: packing ? 'packing' : word });
      itemAt.push(k);
    }
  });
  for (let k = 0; k < items.length; k++) {
    if (items[k]!.place && items[k]!.place!.kind !== 'pointer' && !/^(back|off|over|done)/.test(w(items, k)))
      continue;
    const split = splitMark(items, k);
    if (split && isMark(items, k, split.end, split.word, false)) {
      out.push(split);
      k = split.end - 1;
      continue;
    }
    const hit = MARK_PHRASES.longestAt(words as Token[], first[k]!);
    if (!hit) continue;
    // a phrase that ends within an item is none
    const end = hit.next < words.length ? itemAt[hit.next]! : items.length;
    if (hit.next < words.length && first[end] !== hit.next) continue;
    const mark = hit.payloads[0]!;
    const phrase = words
      .slice(first[k]!, hit.next)
      .map((x) => x.w)
      .join(' ');
    if (
      isMark(
        items,
        k,
        end,
        phrase,
        out.some((m) => m.mark === 'start'),
      )
    ) {
      const begun = mark === 'start' ? begunVerb(items, end) : undefined;
      out.push({ at: k, end, mark, word: phrase, ...(begun ? { task: begun } : {}) });
      k = end - 1;
    }
  }
  return out;
}

/** Do the words from item `k` on, which can start or stop work, do so here? */
function isMark(items: Item[], k: number, end: number, phrase: string, earlier: boolean): boolean {
  const before = w(items, k - 1);
  const after = w(items, end);
  if (
    /^(to|not|n't|until|till|before|when|never|the|a|'d|would|they|she|he|it)$/.test(before) &&
    !/^(till|until|til|since|end|start)$/.test(phrase) &&
    !(before === 'to' && phrase === 'stop') &&
    // "pinned it started at two and done by ten past three": the thing that was pinned, behind its verb
    !(
      before === 'it' &&
      items[k - 2]?.action?.form === 'past' &&
      /^(?:started|began)$/.test(phrase) &&
      (items[end]?.clock !== undefined ||
        (/^(?:at|about|around|just)$/.test(after) && items[end + 1]?.clock !== undefined))
    ) &&
    !(/^(not|n't|never)$/.test(before) && isOnlyThen(items, end)) &&
    // "and I'd started it at one fifteen": had
    !(
      before === "'d" &&
      /^(?:i|we)$/.test(w(items, k - 2)) &&
      /^(?:started|begun|stopped|finished)\b/.test(phrase)
    )
  )
    return false;
  // "it was gone half one by the time I got to the cutting"
  if (/^(?:get|got|came|come) (?:round |around )?to$/.test(phrase))
    return (
      / (?:by the time|before|when|till|until|and then) (?:i|we) (?:\w+ly )?$/.test(
        ` ${wordsBetween(items, k - 6, k)}`,
      ) && items.slice(end, end + 3).some((x) => x.task)
    );
  // "I might put some netting over 2-3": a cloth, and nothing that is over
  if (phrase === 'over' && (items[k - 1]?.material === 'net' || items[end]?.place)) return false;
  // "finished up 2-3", "that's 2-2 and 2-3 finished up": the blocks are done, and not the evening
  if (
    /^finish(?:ed|ing) up$/.test(phrase) &&
    (items[end]?.place?.kind === 'blocks' || items[k - 1]?.place?.kind === 'blocks')
  )
    return false;
  if (
    /^(started|starting|beginning|began)$/.test(phrase) &&
    !begunVerb(items, end) &&
    /^(to|with|coming|going|running|fraying|splitting|off|by)$/.test(after) &&
    !items[end + 1]?.task
  )
    return false;
  // "that bird has been going since six": nobody at work
  if (
    /since$/.test(phrase) &&
    / (has|'s|they 've|they have|he|she) (been )?([a-z]+ing )?$/.test(wordsBetween(items, k - 4, k)) &&
    !items.some((x) => x.task)
  )
    return false;
  // "put it down for some net" decides, "put it down for tonight" stops
  if (
    /^put it (down|away)$/.test(phrase) &&
    after !== '' &&
    !/ (for (now|tonight|today|the (day|night|evening))|now|there|at|,) /.test(
      wordsBetween(items, end, end + 3),
    )
  )
    return false;
  // "picked up at the market: two reels", "picked up the three spools of navy"
  if (
    /^pick(ed|ing)? up$/.test(phrase) &&
    (/ (market|shop|store|stall|sale|fair|town|receipt) /.test(wordsBetween(items, end, end + 4)) ||
      items.slice(end, end + 4).some((x) => x.quantity?.unit || x.cost || (x.material && !x.task)))
  )
    return false;
  // "right, back again", but "put it back again"
  if (
    /^(back|here|at it) again$/.test(phrase) &&
    !/^(|,|\.|and|so|ok|okay|right|oh|well|me|i|'m|am|we|'re|now|yes)$/.test(before)
  )
    return false;
  // "the patch is back on again"
  if (
    phrase === 'back on' &&
    /^(is|'s|are|was|were|put|went|goes|going|sewn|sewed|stitched|tacked)$/.test(before) &&
    !/^(that|i|me)$/.test(w(items, k - 2)) &&
    !items[end + 1]?.task
  )
    return false;
  // "sewed the border back on", "tacked the label back on by hand"
  if (
    phrase === 'back on' &&
    (items[k - 1]?.object || /^(?:patch|label|border|binding)$/.test(items[k - 1]?.part ?? before)) &&
    !items.slice(end, end + 3).some((x) => x.task || x.place)
  )
    return false;
  // "right border off, pressed, back on again"
  if (
    phrase === 'back on' &&
    /^(and|,|&|then)$/.test(before) &&
    items.slice(0, k).some((x) => /^(border|binding|label)$/.test(x.part ?? x.object ?? ''))
  )
    return false;
  // "I'll come back to it": not now
  if (/^back (to|on|at)/.test(phrase) && /^(come|coming|get|go|be)$/.test(before)) return false;
  // "back to the torn one", "back to that tear": where she is again, told by its damage as it might be by its row
  if (
    /^back to/.test(phrase) &&
    /^(the|that|those|this|my)$/.test(after) &&
    items.slice(end + 1, end + 4).some((x) => (x.finding || x.seam || /^ones?$/.test(x.w)) && !x.task)
  )
    return false;
  // "the binding off" is taken off
  if (phrase === 'off') return Boolean(items[k - 1]?.task) && !items[k - 1]?.part;
  // "was through by ten", and not through the layers
  if (phrase === 'through')
    return /^(was|were|got|all|'m|am|half)$/.test(before) && items.slice(end, end + 3).some((x) => x.clock);
  // "in the workroom from nine, out again at noon"
  if (/^(?:up|out|away) again$/.test(phrase))
    return (
      /^(?:at|by|for|about|around)$/.test(after) &&
      items.slice(end + 1, end + 3).some((x) => x.clock) &&
      items.slice(0, k).some((x) => x.clock)
    );
  // got up from the work that she had sat down to
  if (/^(got|get|stood) up$/.test(phrase))
    return earlier || (/^(from|at)$/.test(after) && items.slice(end, end + 6).some((x) => x.clock));
  // "started looking her over at nine"
  if (phrase === 'over')
    return (
      items.slice(Math.max(0, k - 3), k).some((x) => x.task) &&
      !/^(?:looking|going|checking|reading|thinking|turning)\b/.test(items[k - 2]?.w ?? '') &&
      !/^(?:it|her|him|them|this|that)$/.test(items[k - 1]?.w ?? '')
    );
  if (phrase === 'closed' || phrase === 'opened')
    return items.slice(Math.max(0, k - 2), k + 4).some((x) => x.task);
  return true;
}

/** "I didn't stop till ten", "never got up from the piecing before twenty to one": not before then, and so then. */
const isOnlyThen = (items: Item[], end: number): boolean =>
  items
    .slice(end + 1, end + 8)
    .some((x, n) => x.clock !== undefined && /^(?:till|until|til|before)$/.test(w(items, end + n)));

/** A kind of work said between the word for starting and its clock: "started on the cutting at nine". */
export function between(items: Item[], mark: Mark, k: number): Named | undefined {
  for (let m = Math.min(mark.at, k); m < Math.max(mark.end, k); m++) {
    const x = items[m]!;
    // "started taking the binding off at nine": the thing, and no name of the work
    if (x.task && isWorkedOn(items, m)) continue;
    if (x.task && !hasObject(items, m)) return { task: x.task, at: m, item: x };
  }
  for (let m = mark.at - 1; m >= Math.max(0, mark.at - 8); m--) {
    const x = items[m]!;
    if (x.clock || x.span || (x.place && x.place.kind !== 'part')) break;
    // "the unpicking of the binding began at ten"
    if (x.task && isWorkedOn(items, m)) continue;
    if (x.task) return hasObject(items, m) ? undefined : { task: x.task, at: m, item: x };
  }
  for (let m = Math.max(mark.end, k + 1); m < Math.min(items.length, Math.max(mark.end, k) + 7); m++) {
    const x = items[m]!;
    // "started at nine taking the binding off"
    if (x.task && isWorkedOn(items, m)) break;
    if (x.task) return hasObject(items, m) ? undefined : { task: x.task, at: m, item: x };
    if (!isLight(x) || x.w === ',') break;
  }
  return undefined;
}

/** "I'll stop at ten" is not yet so; "gonna stop there, it's ten to nine" is as good as done. */
export function isStillToCome(items: Item[], { at, end }: Mark): boolean {
  const led = / (i 'll|will|must|gonna|should|going to|want to) (try to |try and )?$/;
  return led.test(wordsBetween(items, at - 4, at)) && !stopsHere(items, end);
}

/** "(stop) there", "(stopping) now": behind the word of stopping. */
export const stopsHere = (items: Item[], end: number): boolean => {
  const at = hereFrom(items, end);
  return (
    /^(?:there|here|now)$/.test(items[at]?.w ?? '') && !/^(?:when|if|is|'s)$/.test(items[at + 1]?.w ?? '')
  );
};

/** "(stopping) right there", "just here": the index of the "there". */
export const hereFrom = (items: Item[], end: number): number =>
  /^(?:right|just|about)$/.test(items[end]?.w ?? '') && /^(?:there|here)$/.test(items[end + 1]?.w ?? '')
    ? end + 1
    : end;
