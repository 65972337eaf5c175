import type { Action, Task } from '../../../shared/vocabulary.ts';
import { START_PHRASES, STOP_PHRASES } from '../../lexicon/work-marks.ts';
import { PhraseTrie } from '../../text/phrase-trie.ts';
import type { Token } from '../../text/tokenise.ts';
import { removalAt } from '../clause/removal-at.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { Claims, Sentence } from '../read-amounts.ts';
import type { ReaderState } from '../reader-state.ts';
import type { DayFound } from '../times/find-day.ts';
import type { ClockFound } from '../times/find-time.ts';
import { latestClock, wallMinutes, wallTime } from '../times/local-time.ts';
import { isBreak, TASK_OF_ACTION } from './find-work.ts';
import { isLengthUnknown, saysNoMore, UNKNOWN_LENGTH, vagueWork } from './vague-work.ts';

type Slots = { mark?: 'start' | 'stop'; time?: string; start?: string; end?: string; minutes?: number };
type Named = { task: Task; at: number; item: Item };

const w = (items: Item[], k: number): string => items[k]?.w ?? '';
const wordsOf = (items: Item[], from: number, to: number): string =>
  ` ${items
    .slice(Math.max(0, from), Math.max(0, to))
    .map((x) => x.w)
    .join(' ')} `;

/** After one of these something else is told: a reason, another matter, another piece of work. */
const HEAVY = new Set(
  "because cos since that which who if when while where whether until till but although though except after before so not no never n't needs need will 'll going gonna wants want must should".split(
    ' ',
  ),
);
/** Words of these senses may stand between a time and the kind of work that it is of: "was", "and then", "an hour or so". */
const LIGHT_MARKS = new Set([',', ':', '-', '--', '(', ')', '=', '/']);

/** May the word stand between a time and the kind of work that it is of? Whatever says something else of the quilt may not. */
function isLight(x: Item): boolean {
  if (LIGHT.has(x.w) || MARK_WORDS.has(x.w)) return true;
  if (x.token.kind === 'mark') return LIGHT_MARKS.has(x.w);
  if (HEAVY.has(x.w)) return false;
  return !(
    (x.place && x.place.rule !== 'place.it') ||
    x.finding ||
    x.action ||
    x.material ||
    x.object ||
    x.part ||
    x.fabric ||
    x.cost ||
    x.quantity ||
    x.stitch ||
    x.seam ||
    x.measure
  );
}
const LIGHT = new Set(
  "from between at the my this that was were i 've 's 'm is it been on went , : - -- of did doing for in with some to spent just a bit little more good last night today tonight yesterday morning afternoon evening arvo day only about over all another and so then there here and had have then again back sitting sat worked working session stint solid straight today's of's stretch put got around roughly near nearly ( ) am pm came got put away still now took her him them me takes ran lasted went were all told altogether total".split(
    ' ',
  ),
);
/** After one of these a word for a kind of work is only a part of a treatment's name: "the sewing on", "darning it". */
const OBJECT_AHEAD = new Set([
  'it',
  'them',
  'that',
  'those',
  'these',
  'down',
  'up',
  'in',
  'on',
  'round',
  'together',
]);

/** Is the word for a kind of work at `k` followed by what was worked on? Then it is a treatment. */
function hasObject(items: Item[], k: number): boolean {
  const item = items[k]!;
  const next = items[k + 1];
  if (!next) return false;
  // "spent some time surveying it": the whole of it, and no piece
  if (/^(it|this|that)$/.test(next.w) && /^(surveying|looking|mending)$/.test(item.w)) {
    const far = items[k + 2];
    return (
      !far ||
      !/^(morning|afternoon|evening|week|on|last|this|yesterday|today|too|as|but|,|\.|in|over)$/.test(far.w)
    );
  }
  if (next.place && next.place.kind !== 'part') return true;
  if (item.w.startsWith('the ') || /^(survey|paperwork|shopping|piecework|errands|admin)$/.test(item.w))
    return false;
  if (!item.action && !/ing$/.test(item.w)) return false;
  if (next.w === 'on' || next.w === 'in') {
    // "the sewing on", but "the mending on the quilt", "cutting in the afternoon"
    const far = items[k + 2];
    return !far || /^(of|,|by|and)$/.test(far.w) || far.place?.kind === 'blocks';
  }
  if (OBJECT_AHEAD.has(next.w) && next.w !== 'that') return true;
  if (/^(the|a|those|these|my|her|all|both|some|out|off)$/.test(next.w)) {
    const far = items.slice(k + 2, k + 5);
    return far.some(
      (x) =>
        x.part ||
        x.object ||
        x.seam ||
        // "at the mending a good while"
        (x.finding && x.w !== 'good') ||
        x.fabric ||
        x.place?.kind === 'blocks',
    );
  }
  return Boolean((next.part && next.part !== 'quilt') || next.seam || next.fabric || next.place);
}

/** "8 yd of binding" is goods, not the work of binding. */
const isGoods = (items: Item[], k: number): boolean =>
  items[k]!.material !== undefined &&
  ((w(items, k - 1) === 'of' && !items.slice(Math.max(0, k - 3), k - 1).some((x) => x.duration)) ||
    Boolean(items[k - 1]?.quantity) ||
    Boolean(items[k - 2]?.quantity?.unit));

/** Is a verb of something done at `at`: "patched", "unpicked"? */
const isDeed = (items: Item[], at: number): boolean =>
  at >= 0 && (items[at]!.action ?? removalAt(items, at))?.form === 'past';

/** "unpicked the binding from nine to ten": the thing that a deed is done to, and no name of the work. */
const isWorkedOn = (items: Item[], k: number): boolean => {
  if (!items[k]!.part) return false;
  // "at two thirty, and I'm fixing to take the binding off"
  if (
    /^(off|out)$/.test(w(items, k + 1)) &&
    items.slice(Math.max(0, k - 4), k).some((_x, m, few) => removalAt(items, k - few.length + m))
  )
    return true;
  const at = items.slice(0, k).findLastIndex((x) => !/^(the|its|my|her|that|this|old|of|all|off)$/.test(x.w));
  // "unpicking of the binding began at ten"
  return isDeed(items, at) || (at >= 0 && removalAt(items, at)?.form === 'ing' && w(items, at + 1) === 'of');
};

/** The kind of work named nearest to the run of items `from`..`to`, with only light words between. */
function taskNear(items: Item[], from: number, to: number): Named | undefined {
  let before: Named | undefined;
  for (let k = from - 1; k >= Math.max(0, from - 12); k--) {
    const x = items[k]!;
    if (x.task) {
      if (!hasObject(items, k) && !isGoods(items, k) && !isWorkedOn(items, k))
        before = { task: x.task, at: k, item: x };
      break;
    }
    // "an hour to the piecing, and ten minutes to …": a list goes on with its own kind of work
    if (x.w === ',' && k !== from - 1 && !SUMMING.test(wordsOf(items, k + 1, from))) break;
    if (!isLight(x) && !x.clock) break;
    if (x.clock || x.span || x.duration) break;
  }
  let after: Named | undefined;
  for (let k = to; k < Math.min(items.length, to + 12); k++) {
    const x = items[k]!;
    if (x.task) {
      if (!hasObject(items, k) && !isGoods(items, k) && !isWorkedOn(items, k))
        after = { task: x.task, at: k, item: x };
      break;
    }
    if (!isLight(x)) break;
    if (x.clock || x.span || x.duration) break;
    if (w(items, k) === ',' && w(items, k + 1) !== 'on' && !closesWithTask(items, k + 1)) break;
  }
  if (before && after && (after.at === to || /^(of|on|for|to|doing|at|in|went)$/.test(w(items, to))))
    return after;
  if (before && after) return from - before.at <= after.at - to + 2 ? before : after;
  return before ?? after;
}

/** "piecing, all told 3 hours", "the mending, that was an hour": what only leads up to the time. */
const SUMMING =
  /^ (?:(?:all told|in all|altogether|total|so|about|around|nearly|just|over|a good|that took|it took|that was|it was|which took|took me|took|for|me|say|maybe) )+$/;

/** "…, all mending": nothing but the kind of work after the comma. */
function closesWithTask(items: Item[], from: number): boolean {
  const last = items.at(-1);
  return Boolean(last?.task) && items.length - from <= 3 && items.slice(from, -1).every(isLight);
}

const MARK_WORDS = new Set(
  'start started starting begin began begun beginning stop stopped stopping quit quitting finish finished finishing end ended done since till until til off out at over up closed opened close open kicked kicking knocked knocking packed packing called calling wrapped wrapping left broke resumed resuming gave carried kept going sat me that doing been'.split(
    ' ',
  ),
);

const MARK_PHRASES = new PhraseTrie<'start' | 'stop'>();
for (const p of START_PHRASES) MARK_PHRASES.add(p, 'start');
for (const p of STOP_PHRASES) MARK_PHRASES.add(p, 'stop');

type Mark = { at: number; end: number; mark: 'start' | 'stop'; word: string };

/** Words for starting and stopping in the sentence, in order. */
function marksOf(items: Item[]): Mark[] {
  const out: Mark[] = [];
  // an item can be several words: "sat down" may have been read as one
  const words: { w: string }[] = [];
  const first: number[] = [];
  const itemAt: number[] = [];
  items.forEach((x, k) => {
    first.push(words.length);
    for (const word of x.w.split(' ')) {
      // "backing up" is "packing up" where the ear may have slipped
      const packing = word === 'backing' && x.token.heard && /^(it|up|in)$/.test(w(items, k + 1));
      words.push({ w: packing ? 'packing' : word });
      itemAt.push(k);
    }
  });
  for (let k = 0; k < items.length; k++) {
    if (items[k]!.place && items[k]!.place!.kind !== 'pointer' && !/^(back|off|over|done)/.test(w(items, k)))
      continue;
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
      out.push({ at: k, end, mark, word: phrase });
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
    !(before === 'to' && phrase === 'stop')
  )
    return false;
  if (
    /^(started|starting|beginning|began)$/.test(phrase) &&
    /^(to|with|coming|going|running|fraying|splitting|off|by)$/.test(after) &&
    !items[end + 1]?.task
  )
    return false;
  // "that bird has been going since six": nobody at work
  if (
    /since$/.test(phrase) &&
    / (has|'s|they 've|they have|he|she) (been )?([a-z]+ing )?$/.test(wordsOf(items, k - 4, k)) &&
    !items.some((x) => x.task)
  )
    return false;
  // "put it down for some net" decides, "put it down for tonight" stops
  if (
    /^put it (down|away)$/.test(phrase) &&
    after !== '' &&
    !/ (for (now|tonight|today|the (day|night|evening))|now|there|at|,) /.test(wordsOf(items, end, end + 3))
  )
    return false;
  // "picked up at the market: two reels"
  if (
    /^pick(ed)? up$/.test(phrase) &&
    / (market|shop|store|stall|sale|fair|town|receipt) /.test(wordsOf(items, end, end + 4))
  )
    return false;
  // "the binding off" is taken off
  if (phrase === 'off') return Boolean(items[k - 1]?.task) && !items[k - 1]?.part;
  // got up from the work that she had sat down to
  if (/^(got|get|stood) up$/.test(phrase)) return earlier;
  if (phrase === 'over') return items.slice(Math.max(0, k - 3), k).some((x) => x.task);
  if (phrase === 'closed' || phrase === 'opened')
    return items.slice(Math.max(0, k - 2), k + 4).some((x) => x.task);
  return true;
}

/** Reads the time at work told in one sentence, and claims its words. */
export function readTimes(
  state: ReaderState,
  sentence: Sentence,
  preceding: Sentence | undefined,
  following: Sentence | undefined,
  days: DayFound[],
  claims: Claims,
): void {
  const { items } = sentence;
  const v = { index: -1, sentence: sentence.number, items };
  const now = wallMinutes(state.local);
  const used = new Set<number>();
  const all = wordsOf(items, 0, items.length);
  // "2:50-4:15 … no, 3:50-5:15": the later stretch stands for the earlier
  if (/^(no|sorry|wait|oops)$/.test(w(items, 0)) && items.slice(1, 4).some((x) => x.span)) {
    const wrong = state.drafts.findIndex(
      (d) => d.entry.kind === 'work' && d.entry.start && d.sentence < sentence.number,
    );
    if (wrong >= 0) state.drafts.splice(wrong, 1);
  }

  const dayOf = (k: number): { start: number; part?: DayFound['part'] } | undefined => {
    const at = items[k]!.token.from;
    const first = items[0]!.token.from;
    const last = items.at(-1)!.token.to;
    const here = days.filter((d) => !d.vague && d.start <= now);
    const within = here
      // "this arvo i'm going to …" after the time is another matter; "at eleven last night" is not
      .filter((d) => d.index >= first && d.index <= last && (d.index < at || onlyLight(items, k, d.index)))
      .sort((a, b) => Math.abs(a.index - at) - Math.abs(b.index - at))[0];
    const found =
      within ?? here.filter((d) => d.index < first && d.part === undefined && d.start < now - 1440).at(-1);
    return found ? { start: found.start, ...(found.part ? { part: found.part } : {}) } : undefined;
  };
  const push = (
    task: Named | { task: Task } | undefined,
    slots: Slots,
    rule: string,
    on: Item[],
    from: number,
    to: number,
  ): void => {
    const draft = makeDraft(
      'work',
      v,
      {
        task: [
          task?.task,
          'work.task',
          task && 'item' in task ? task.item : undefined,
          task && 'item' in task ? 'said' : 'implied',
        ],
        ...Object.fromEntries(
          Object.entries(pastOnly(slots, now)).map(([slot, value]) => [slot, [value, rule, on]]),
        ),
      } as Parameters<typeof makeDraft>[2],
      'unneeded',
    );
    state.drafts.push(draft);
    // "started unpicking the patch on 3-2 at four": the deed is told as well, only its time is taken
    const told = on.length > 0 && deedIn(items, from, to);
    for (let k = from; k < to; k++)
      if (!told || on.includes(items[k]!) || (on.includes(items[k + 1]!) && AT.test(w(items, k))))
        used.add(k);
    // "unpicked the binding from nine to ten": what was done is told as well
    if (task && 'at' in task && !told && !isDeedDone(items, task.at)) used.add(task.at);
  };

  // 1. Stretches: "10.15–12.10 mending, less 15 min phone"; "broke from seven to quarter to eight" is a break in another
  let broken = 0;
  for (let k = 0; k < items.length; k++) {
    const span = items[k]!.span;
    if (!span || !isBreakSpan(items, k)) continue;
    const { startAt, endAt } = resolve(span.start, span.end, now, dayOf(k));
    broken += endAt - startAt;
    used.add(k);
    lead(items, k, used);
  }
  for (let k = 0; k < items.length; k++) {
    const span = items[k]!.span;
    if (!span || used.has(k)) continue;
    const task = taskNear(items, k, k + 1) ?? goesOnWith(state, items, k);
    const between =
      w(items, k - 1) === 'between' &&
      span.start.rule === 'time.hour' &&
      span.end.rule === 'time.hour' &&
      !span.start.fixed &&
      !span.end.fixed;
    if (
      between &&
      !task &&
      !/ (worked|work|at it|sat|on it|was|sewing|did) /.test(wordsOf(items, Math.max(0, k - 5), k))
    )
      continue;
    const { startAt, endAt } = resolve(span.start, span.end, now, dayOf(k));
    const slots: Slots = { start: wallTime(startAt), end: wallTime(endAt) };
    const rest = breakOf(items, k, used, broken);
    if (rest && endAt - startAt - rest.minutes > 0) slots.minutes = endAt - startAt - rest.minutes;
    else {
      const said = items.findIndex(
        (x, m) =>
          x.duration &&
          m > k &&
          m < k + 9 &&
          /^(so|'s|that|makes|total|=|is|in|all|altogether|,)$/.test(w(items, m - 1)),
      );
      const length = said >= 0 ? items[said]!.duration!.minutes : undefined;
      if (length && length < endAt - startAt && !taskNear(items, said, said + 1)) {
        slots.minutes = length;
        used.add(said);
      }
    }
    push(task, slots, 'work.span', [items[k]!], k, k + 1);
    lead(items, k, used);
  }

  // "nine till noon and one till four on the cutting": the kind of work holds for both
  const own = state.drafts.filter(
    (d) => d.entry.kind === 'work' && d.entry.start && d.sentence === sentence.number,
  );
  const told = own.find((d) => d.entry.kind === 'work' && d.entry.task)?.entry as { task?: Task } | undefined;
  if (told?.task) for (const d of own) if (d.entry.kind === 'work') d.entry.task ??= told.task;

  // 2. Starts and stops with their clock times
  tookTime(items, claims);
  const marks = marksOf(items);
  if (!marks.length) hoursAndMinutes(items);
  const clocks = items.map((x, k) => (x.clock ? k : -1)).filter((k) => k >= 0);
  const timed: {
    k: number;
    mark: 'start' | 'stop';
    word: Mark;
    task: Named | undefined;
    clock: ClockFound;
  }[] = [];
  // "9.30 start, 11.15 stop": each mark after its clock
  const paired =
    clocks.length > 1 &&
    clocks.length === marks.length &&
    clocks.every((k, n) => k < marks[n]!.at && marks[n]!.at - k <= 3);
  for (const k of clocks) {
    const before = marks
      .filter((m) => m.end <= k && k - m.end <= 9 && !clocks.some((c) => c > m.at && c < k))
      .at(-1);
    const after = marks.find(
      (m) => m.at > k && m.at - k <= (k <= 2 ? 14 : 7) && !clocks.some((c) => c > k && c < m.at),
    );
    let mark = before;
    // "seven o'clock it was when I sat down and half past eight when I got up"
    const when =
      after !== undefined && / when (?:i |we )?(?:\w+ly )?$/.test(wordsOf(items, k + 1, after.at))
        ? after
        : undefined;
    // "at", "since" and the like tie the clock to what was said before it
    const tied =
      /^(at|since|till|until|til|from|by|around|about|before|after|past|round)$/.test(w(items, k - 1)) ||
      (after !== undefined && clocks.some((c) => c > k && c >= after.end && c - after.end <= 3));
    if (paired) mark = marks[clocks.indexOf(k)];
    else if (when) mark = when;
    else if (!before || (after && !tied && after.at - k < k - before.end && k - before.end > 2))
      mark = after ?? before;
    const from = w(items, k - 1) === 'from';
    if (from && (!mark || mark.mark === 'stop' || mark.at > k))
      mark = { at: k - 1, end: k, mark: 'start', word: 'from' };
    // "went on to half twelve"
    if (mark?.end === k && /^(go|went|gone|kept|carried|worked) (right |straight )?on to$/.test(mark.word))
      mark = { ...mark, mark: 'stop' };
    if (!mark && w(items, k - 1) === 'back') mark = { at: k - 1, end: k, mark: 'start', word: 'back' };
    if (!mark) continue;
    // "I'll stop at ten" is not yet so
    if (
      / (i 'll|will|must|gonna|should|going to|want to) (try to |try and )?$/.test(
        wordsOf(items, mark.at - 4, mark.at),
      )
    )
      continue;
    const near = taskNear(items, Math.min(mark.at, k), Math.max(k + 1, mark.end)) ?? between(items, mark, k);
    timed.push({ k, mark: mark.mark, word: mark, task: near, clock: items[k]!.clock! });
  }
  const starts = timed.filter((t) => t.mark === 'start');
  const stops = timed.filter((t) => t.mark === 'stop');
  const nowStop =
    starts.length === 1 &&
    !stops.length &&
    (/ (till|until|til|to) now /.test(all) ||
      marks.some(
        (m) =>
          m.mark === 'stop' &&
          m.at > starts[0]!.k &&
          !/^(till|until|til)$/.test(m.word) &&
          !items.slice(m.end, m.end + 3).some((x) => x.duration) &&
          // herself, or just now: "rows one to three are finished" ends no work
          !/^(are|is|were|was|'s|'re)$/.test(w(items, m.at - 1)) &&
          (/^(now|here|there|for|)$/.test(w(items, m.end)) ||
            /^(i|'m|'ve|just|now|me|and|,)$/.test(w(items, m.at - 1)) ||
            /ing( (it|up|off|in))*$/.test(m.word)),
      ));
  if (
    starts.length === 1 &&
    stops.length === 1 &&
    (starts[0]!.task?.task === stops[0]!.task?.task || !starts[0]!.task || !stops[0]!.task)
  ) {
    const [a, b] = [starts[0]!, stops[0]!];
    const { startAt, endAt } = resolve(a.clock, b.clock, now, dayOf(b.k) ?? dayOf(a.k));
    const rest =
      breakOf(items, Math.max(a.k, b.k), used, broken) ?? breakOf(items, Math.min(a.k, b.k), used, broken);
    push(
      a.task ?? b.task,
      {
        start: wallTime(startAt),
        end: wallTime(endAt),
        ...(rest && endAt - startAt > rest.minutes ? { minutes: endAt - startAt - rest.minutes } : {}),
      },
      'work.start-and-stop',
      [items[a.k]!, items[b.k]!],
      Math.min(a.word.at, a.k),
      Math.max(a.word.end, a.k + 1),
    );
    for (let k = Math.min(b.word.at, b.k); k < Math.max(b.word.end, b.k + 1); k++) used.add(k);
  } else if (nowStop) {
    const a = starts[0]!;
    const at = latestClock(a.clock, now, dayOf(a.k));
    const rest = breakOf(items, a.k, used, broken);
    push(
      a.task,
      {
        start: wallTime(at),
        end: state.local,
        ...(rest && now - at > rest.minutes ? { minutes: now - at - rest.minutes } : {}),
      },
      'work.since-until-now',
      [items[a.k]!],
      Math.min(a.word.at, a.k),
      Math.max(a.word.end, a.k + 1),
    );
    const stop = marks.find((m) => m.mark === 'stop' && m.at > a.k);
    if (stop) for (let k = stop.at; k < stop.end; k++) used.add(k);
  } else
    for (const t of timed) {
      const at = latestClock(t.clock, now, dayOf(t.k));
      push(
        t.task,
        { mark: t.mark, time: wallTime(at) },
        `work.${t.mark}-at`,
        [items[t.k]!],
        Math.min(t.word.at, t.k),
        Math.max(t.word.end, t.k + 1),
      );
    }

  lendTask(state, sentence, preceding, following, claims);

  // 3. "finished the looking over ten minutes ago"
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.duration || w(items, k + 1) !== 'ago' || used.has(k)) continue;
    const mark = marks.filter((m) => m.end <= k).at(-1) ?? marks.find((m) => m.at > k);
    if (!mark) continue;
    // "I'll stop at ten" is not yet so
    if (
      / (i 'll|will|must|gonna|should|going to|want to) (try to |try and )?$/.test(
        wordsOf(items, mark.at - 4, mark.at),
      )
    )
      continue;
    const near = taskNear(items, mark.at, mark.end) ?? between(items, mark, k);
    push(
      near,
      { mark: mark.mark, time: wallTime(now - item.duration.minutes) },
      'work.ago',
      [item],
      mark.at,
      k + 2,
    );
  }

  // 4. Lengths of a named kind of work: "shopping, 50 min", "half an hour on the paperwork"
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.duration || used.has(k)) continue;
    if (
      /^(ago|old|late|early|later|from|apart)$/.test(w(items, k + 1)) ||
      (/^(another|every|in|within)$/.test(w(items, k - 1)) && w(items, k - 2) !== 'put')
    )
      continue;
    if (isBreak(items, k) && items.some((x) => x.span || x.clock)) continue;
    // "took forty minutes to take the binding off": the treatment's own
    if (w(items, k + 1) === 'to' && / (took|take|taken) /.test(wordsOf(items, k - 4, k))) continue;
    if (items.length <= 8 && !items.some((x) => x.task || x.action)) {
      const ended = state.drafts.find(
        (d) =>
          d.entry.kind === 'work' &&
          d.sentence === preceding?.number &&
          d.entry.mark === 'stop' &&
          !d.entry.time,
      );
      // "Finished the tying. Four hours ten all told."
      if (ended && preceding && !preceding.items.some((x) => x.place?.kind === 'blocks')) {
        const { mark: _mark, ...rest } = ended.entry as { kind: 'work'; task?: Task; mark?: 'stop' };
        ended.entry = { ...rest, minutes: item.duration.minutes };
        used.add(k);
        continue;
      }
    }
    const task = otherTask(items, k) ?? worked(items, k) ?? taskNear(items, k, k + 1) ?? errand(items, k);
    // "25 min on 2-2": nothing but how long, and where
    if (!task && isSpentAt(items, k)) {
      const running = state.memory.running ?? state.memory.ran;
      push(
        running ? { task: running } : undefined,
        { minutes: item.duration.minutes },
        'work.length',
        items,
        k,
        items.length,
      );
      continue;
    }
    if (!task || used.has(task.at)) continue;
    // "fifty minutes for the vacuuming alone" is the length of the treatment just told
    if (
      task.at > k &&
      (w(items, task.at + 1) === 'alone' ||
        (/ (just|only) (for )?(the )?$/.test(wordsOf(items, Math.max(0, task.at - 3), task.at)) &&
          task.task !== 'other'))
    )
      continue;
    // "finished the binding, ladder stitch, two hours": the treatment's own length
    if (
      task.at < k &&
      /^(finished|done|did|completed)$/.test(w(items, task.at - 1).replace(/^the$/, w(items, task.at - 2)))
    ) {
      if (task.task === 'binding' || task.task === 'tying' || task.task === 'quilting') continue;
    }
    let minutes = item.duration.minutes;
    const less = items.findIndex(
      (_x, m) => m > k && !used.has(m) && isBreak(items, m) && !items.slice(k + 1, m).some((x) => x.duration),
    );
    if (less >= 0) {
      minutes -= lengthOf(items[less]!);
      used.add(less);
    }
    const from = Math.min(k, task.at);
    push(task, { minutes }, 'work.length', [item], from, Math.max(k, task.at) + 1);
    // what the length was spent on is no treatment: "twenty minutes putting the big frame up"
    if (task.task === 'other')
      for (let m = k; m < items.length && !/^(,|and|then|--)$/.test(w(items, m)); m++) used.add(m);
  }

  // 5. Work whose time nobody knows: "i did some piecing over the weekend, couldn't tell you how long"
  const next = following && following.items.length <= 8 ? wordsOf(following.items, 0, 8) : ' ';
  const unknown =
    isLengthUnknown(all, items) || (following !== undefined && isLengthUnknown(next, following.items));
  const length = items.some((x) => x.duration);
  const timedWork = state.drafts.some((d) => d.sentence === sentence.number && d.entry.kind === 'work');
  const vague =
    unknown || !(length || timedWork)
      ? vagueWork(
          items,
          unknown,
          (k) => !used.has(k),
          (k) => !hasObject(items, k) && !isGoods(items, k),
          (k) => verbOfWork(items, k),
        )
      : undefined;
  if (vague) {
    const { task, at, from, to } = vague;
    push(task && { task, at, item: items[at]! }, {}, 'work.time-unknown', items.slice(from, to), from, to);
    for (let k = 0; k < items.length; k++) if (!used.has(k) && saysNoMore(items, k)) used.add(k);
  } else if (!timedWork) {
    // "binding: bias or straight? dunno" is a matter, and no time at work
    const matter = state.drafts.some((d) => d.sentence === sentence.number && d.entry.kind === 'decision');
    const at =
      unknown && !length && !matter ? items.findIndex((_x, k) => taskOf(items, k) !== undefined) : -1;
    if (at >= 0)
      push(
        { task: taskOf(items, at)!, at, item: items[at]! },
        {},
        'work.time-unknown',
        [items[at]!],
        0,
        endOfUnknown(items, at),
      );
    else readBareMarks(state, items, marks, push, used);
  }

  for (const k of used) claims.cut.add(items[k]!);
}

/** "carried on with that, seven to nine", "more of the same": the work that ran last. */
function goesOnWith(state: ReaderState, items: Item[], k: number): { task: Task } | undefined {
  const ran = state.memory.running ?? state.memory.ran;
  return ran !== undefined &&
    /^ (?:(?:and|so|then|i|we|just) )*(?:(?:carried|carrying|kept|keeping|went|going|cracked) on(?: with| at)? (?:that|it|this|the same)|more of (?:that|the same|it)|same again|(?:the )?same|back (?:to|at|on) (?:it|that)|at it again)(?: again| tonight| today| this morning| this afternoon)*(?: ,| :| -)? (?:from )?$/.test(
      wordsOf(items, 0, k),
    )
    ? { task: ran }
    : undefined;
}

/** The kind of work that the word at `k` names, or that its verb is of. */
const taskOf = (items: Item[], k: number): Task | undefined =>
  verbOfWork(items, k) ?? (items[k]!.task && !hasObject(items, k) ? items[k]!.task : undefined);

/** "I was out shopping, I never noticed how long, and came home with two packs of pins": where something else is told. */
function endOfUnknown(items: Item[], task: number): number {
  for (let k = task + 1; k < items.length; k++) {
    if (!/^(,|and|but)$/.test(w(items, k))) continue;
    if (!UNKNOWN_LENGTH.test(wordsOf(items, 0, k))) continue;
    if (items.slice(k).some((x) => x.quantity?.unit || x.place?.kind === 'blocks')) return k;
  }
  return items.length;
}

/**
 * "It took me two hours to unpick the border", "cutting the strips took an hour", "40 min on 3-2, darning": what has taken
 * its time is done.
 */
const PAST_OF: Record<string, string> = {
  unpick: 'unpicked',
  remove: 'removed',
  take: 'took',
  rip: 'ripped',
  strip: 'stripped',
  get: 'got',
};
function tookTime(items: Item[], claims: Claims): void {
  const length = items.findIndex((x) => x.duration);
  if (length < 0) return;
  const took = items.slice(Math.max(0, length - 4), length).findIndex((x) => /^(took|taken)$/.test(x.w));
  const done = (k: number): void => {
    items[k]!.action = { ...items[k]!.action!, form: 'past' };
  };
  if (took >= 0) {
    const deed = items[length + 2];
    const past = deed && PAST_OF[deed.w];
    if (w(items, length + 1) === 'to' && deed && (past || deed.action?.form === 'base')) {
      if (deed.action) done(length + 2);
      else deed.w = past!;
      claims.drop.add(items[length + 1]!);
      return;
    }
    const at = Math.max(0, length - 4) + took;
    const verb = items.slice(0, at).findLastIndex((x) => x.action?.form === 'ing');
    const said = items.slice(verb + 1, at);
    if (
      verb >= 0 &&
      said.some((x) => x.place || x.seam || x.object || x.material) &&
      !said.some((x) => x.action)
    )
      done(verb);
    return;
  }
  const last = items.length - 1;
  if (
    items[last]!.action?.form === 'ing' &&
    w(items, last - 1) === ',' &&
    items.some((x) => x.place?.kind === 'blocks')
  )
    done(last);
}

/** "cutting 25 min, piecing 1:20": hours and minutes of a kind of work, where nothing starts or stops. */
function hoursAndMinutes(items: Item[]): void {
  for (let k = 1; k < items.length; k++) {
    const figures = /^([0-5]):([0-5]\d)$/.exec(w(items, k));
    const named = items[/^[:,=-]$/.test(w(items, k - 1)) ? k - 2 : k - 1];
    if (!figures || !items[k]!.clock || !named?.task) continue;
    const item = items[k]!;
    const minutes = Number(figures[1]) * 60 + Number(figures[2]);
    item.duration = { next: item.clock!.next, minutes, rule: 'time.hours' };
    delete item.clock;
  }
}

/** A time whose kind of work is said further off: in the sentence, or alone before or after it ("Surveying, the whole of it"). */
function lendTask(
  state: ReaderState,
  { items, number }: Sentence,
  preceding: Sentence | undefined,
  following: Sentence | undefined,
  claims: Claims,
): void {
  const bare = state.drafts.filter(
    (d) => d.entry.kind === 'work' && d.sentence === number && !d.entry.task && d.entry.mark !== 'stop',
  );
  if (!bare.length) return;
  const named = (list: Item[], reach = list.length): Item[] =>
    list.slice(0, reach).filter(
      (x, k) =>
        x.task &&
        x.task !== 'other' &&
        !hasObject(list, k) &&
        !isGoods(list, k) &&
        // "the binding" may be the thing
        (!x.part ||
          list.length <= 3 ||
          / (on|at|of|doing|was|all|just) (the |my )?$/.test(wordsOf(list, k - 2, k))),
    );
  const timeless = (list: Item[]): boolean => !list.some((x) => x.clock || x.span || x.duration);
  let found: Item | undefined;
  const here = named(items);
  if (
    new Set(here.map((x) => x.task)).size === 1 &&
    !items.some((x) => x.action?.form === 'past' || x.finding)
  )
    found = here[0];
  else if (
    !here.length &&
    following &&
    timeless(following.items) &&
    !/ (next|tomorrow|then|will|'ll|later|to) /.test(wordsOf(following.items, 0, 5))
  )
    found = named(
      following.items,
      Math.max(1, following.items.findIndex((x) => !isLight(x) && !/^(all|most|both|half)\b/.test(x.w)) + 1),
    )[0];
  if (!found && !here.length && preceding && preceding.items.length <= 3 && timeless(preceding.items))
    found = named(preceding.items)[0];
  if (!found) return;
  for (const d of bare) {
    d.entry = { ...d.entry, task: found.task } as Draft['entry'];
    d.origins['task'] = {
      rule: 'work.task',
      how: 'said',
      from: found.token.from,
      to: found.end ?? found.token.to,
    };
  }
  // "unpicked the ties from nine to ten" names the work by what was done: that is told too
  if (!isDeedDone(items, items.indexOf(found)) && !isChosen(preceding?.items ?? [], found))
    claims.cut.add(found);
}

/** "Darning won. I'm at it now, and have been since half past one": one of two ways, and no bare name of the work. */
const isChosen = (items: Item[], task: Item): boolean =>
  /^(won|wins|it)$/.test(items[items.indexOf(task) + 1]?.w ?? '') && items.includes(task);

const isDeedDone = (items: Item[], at: number): boolean =>
  (isDeed(items, at) && items.slice(at + 1, at + 6).some(isThing)) ||
  isNowOn(items, at) ||
  isProcess(items, at);

/** "the binding went on between two and four", "binding's on, 40 minutes": the thing that the work has put there. */
const isNowOn = (items: Item[], at: number): boolean =>
  items[at]?.part === 'binding' &&
  /^ (?:went|is|'s|has gone|was put|got put)(?: back| all| finally| now)* on (?!to )| on (?:from|between) /.test(
    `${wordsOf(items, at + 1, at + 6)} `,
  );

/** "vacuuming of the front was finished at 14:10": work on a thing, told as the name of what went on. */
const isProcess = (items: Item[], at: number): boolean =>
  items[at]?.action?.form === 'ing' &&
  // "the front has been in course of vacuuming since one"
  (/ in (?:the )?(?:course|process) of $/.test(wordsOf(items, at - 4, at)) ||
    (w(items, at + 1) === 'of' && items.slice(at + 2, at + 5).some((x) => isThing(x) || x.place)));

const isSpentAt = (items: Item[], k: number): boolean =>
  k <= 3 &&
  /^(on|at|for)$/.test(w(items, k + 1)) &&
  items.slice(k + 2).some((x) => x.place?.kind === 'blocks') &&
  items.every(
    (x) => !(x.action || x.finding || x.fail || x.object || x.material || x.cost || x.quantity || x.stitch),
  ) &&
  items.length <= k + 8;

const AT = /^(at|since|from|till|until|til|by|around|about)$/;

/** Is something told between `from` and `to` that is done to a named thing: "taking the old binding off", "tying row three"? */
function deedIn(items: Item[], from: number, to: number): boolean {
  for (let k = from; k < to; k++) {
    const x = items[k]!;
    const removal = x.action ? undefined : removalAt(items, k);
    const form = x.action?.form ?? removal?.form;
    if (form !== 'ing' && form !== 'past') continue;
    const things = items.slice(k + 1, Math.min(to, k + 8));
    if (removal ? things.some((y) => y.object || y.place) : things.some((y) => isThing(y) && !y.task))
      return true;
  }
  return false;
}

const isThing = (x: Item): boolean =>
  Boolean(
    x.object ||
      x.part ||
      x.seam ||
      x.finding ||
      x.fabric ||
      (x.place && x.place.kind !== 'part' && x.place.rule !== 'place.it'),
  );

/** A time that would lie after the note is the same reading half a day or a day before. */
function pastOnly(slots: Slots, now: number): Slots {
  const out = { ...slots };
  for (const key of ['time', 'start', 'end'] as const) {
    const value = out[key];
    if (value !== undefined && wallMinutes(value) > now) return earlier(out, 1440, now);
  }
  return out;
}
function earlier(slots: Slots, by: number, now: number): Slots {
  const out = { ...slots };
  for (const key of ['time', 'start', 'end'] as const) {
    const value = out[key];
    if (value !== undefined) out[key] = wallTime(wallMinutes(value) - by);
  }
  const latest = out.end ?? out.time ?? out.start;
  return latest !== undefined && wallMinutes(latest) > now ? earlier(out, by, now) : out;
}

/** Do only light words stand between the time at `k` and the day named at `index`? */
function onlyLight(items: Item[], k: number, index: number): boolean {
  for (let m = k + 1; m < items.length && items[m]!.token.from < index; m++)
    if (!/^(,|on|the|of|in|at|-|[a-z]+ing|survey|paperwork|work|mine)$/.test(items[m]!.w)) return false;
  return true;
}

type Push = (
  task: Named | { task: Task } | undefined,
  slots: Slots,
  rule: string,
  on: Item[],
  from: number,
  to: number,
) => void;

const BACK =
  / (back (at|to|on) (it|work)|back at it|carrying on|resuming|right back to it|starting again|(?<! (?:it|them|that|those|these|this|one|ones|came|come|goes|went|taken|took|patch|backing|binding|batting|label|border) )off again|on we go|picking (it|things) (back )?up again|back in the chair|back from (my )?(lunch|tea|dinner|supper|the (shop|shops|door|phone))|back to work( after .*)?|back after (my )?(lunch|tea|dinner|supper)) $/;
/** Not now: "when I start", "going to stop", "want to get cracking". */
const LATER =
  / (if|when|before|after|once|must|will|'ll|gonna|should|could|might|ca n't|never|next|((want|wants|need|needs|going|about|have|hope|hoping|plan|planning|mean|meant|ready|like|used|able|ought) to( be)?)|to|((when|before|until|till|after|once|if) i)) (just |really |then |be )?$/;
/** Words for going on with what was in hand. */
const GOES_ON =
  /^(back|resum|pick|took|take|taking|carr|crack|off we go|(get|got|getting) (going|started|back|cracking|to work)|(went|going|go|gone) back)/;
/** Words of a stop that are as often said of a thing: only "for tonight" and the like makes them hers. */
const NOT_SELF =
  /^(stops|quit|finish|finished|finishing|end|ended|ending|ends|cease|ceased|closed|off|done|over|till|until|til|finish(ed|ing)? (off|for)|(gave|give|giving) (it )?up|knock(ed|ing)? over|(take|took|taking) on a break)$/;
const LEAVE = new Set([
  'because',
  'cos',
  'early',
  'when',
  'there',
  'here',
  'now',
  'for',
  'it',
  'tonight',
  'today',
  'me',
  'up',
  'in',
  'off',
  'a',
  '',
]);

/** "starting on the survey now", "that's the survey finished", "back at it", "stopping there". */
function readBareMarks(
  state: ReaderState,
  items: Item[],
  marks: Mark[],
  push: Push,
  used: Set<number>,
): void {
  if (items.some((x) => x.duration || x.clock || x.span)) return;
  const running = state.memory.running;
  const ran = running ?? state.memory.ran;
  const all = wordsOf(items, 0, items.length);
  let said = false;
  for (const m of marks) {
    // "the tying of rows one and two was completed": a treatment that is done
    if (used.has(m.at) || items.some((_x, q) => q < m.at && isProcess(items, q))) continue;
    // "when I start", "going to stop": not now
    const led = wordsOf(items, m.at - 5, m.at);
    if (
      LATER.test(led) ||
      (m.mark === 'start' && / (tomorrow|next week|later on) /.test(all) && !/ now /.test(all))
    )
      continue;
    const after = nearTask(items, m.end, 4);
    const before = nearTaskBefore(items, m.at, 4);
    const task = after ?? before;
    if (/^(till|until|til|since|done for|over|end|start|stop)$/.test(m.word) && !task) {
      if (!/^(stop|done for)$/.test(m.word)) continue;
    }
    if (task) {
      if (used.has(task.at)) continue;
      // "finished the binding by hand": a treatment
      if (
        m.mark === 'stop' &&
        /^(binding|tying|quilting)$/.test(task.task) &&
        items.some((x) => x.stitch || x.weakStitch)
      )
        continue;
      push(
        task,
        { mark: m.mark },
        m.mark === 'start' ? 'work.starting' : 'work.stopping',
        [items[m.at]!],
        Math.min(m.at, task.at),
        Math.max(m.end, task.at + 1),
      );
      said = true;
      continue;
    }
    if (m.mark === 'start') {
      const free = !items.slice(m.end, m.end + 4).some((x) => x.place || x.action || x.object || x.material);
      if (
        GOES_ON.test(m.word) &&
        free &&
        (/ (it|again)$/.test(m.word) || !w(items, m.end) || isLight(items[m.end]!))
      ) {
        push(ran ? { task: ran } : undefined, { mark: 'start' }, 'work.back', [items[m.at]!], m.at, m.end);
        said = true;
      } else if (
        items.length <= 5 &&
        /^(start|begin|commenc|beginn|kick)/.test(m.word) &&
        !items.some((x) => x.place || x.action || x.object || x.material || x.quantity)
      ) {
        push(undefined, { mark: 'start' }, 'work.starting', [items[m.at]!], m.at, m.end);
        said = true;
      }
      continue;
    }
    // "picking up where I left off"
    if (/^left off$/.test(m.word) && items.slice(0, m.at).some((x) => x.w === 'where')) {
      push(ran ? { task: ran } : undefined, { mark: 'start' }, 'work.back', items, 0, m.end);
      said = true;
      continue;
    }
    // a stop without a task must be about herself
    const next = w(items, m.end);
    const rest = wordsOf(items, m.end, m.end + 3);
    if (NOT_SELF.test(m.word)) {
      if (!/ (for (tonight|today|now|the (day|night|evening))|up for) /.test(` ${m.word}${rest}`)) continue;
    } else if (
      /^(stopped|stop|done for|stopping|all done|call(ed|ing)? it|pause|pausing|paused)$/.test(m.word) &&
      !LEAVE.has(next)
    )
      continue;
    else if (
      /^(break|take|took|taking|have|had|having|pause|paused|stop|stopped|call)/.test(m.word) &&
      / for$/.test(m.word)
    ) {
      if (/^(a|an|some|the) (row|block|seam)/.test(rest.trim())) continue;
    }
    if (
      /^(stopped|stop)$/.test(m.word) &&
      !/^(because|cos|when|early)$/.test(next) &&
      / (it|the|bleeding|running) /.test(rest) &&
      !/ (there|here|now|for) /.test(rest)
    )
      continue;
    push(
      running ? { task: running } : undefined,
      { mark: 'stop' },
      'work.stopping',
      [items[m.at]!],
      m.at,
      m.end,
    );
    said = true;
  }
  if (said) return;
  if (items.length <= 8 && BACK.test(wordsOf(items, 0, items.length))) {
    push(ran ? { task: ran } : undefined, { mark: 'start' }, 'work.back', items, 0, items.length);
    return;
  }
  // "on to the cutting now", "i'm on the mending now", "now for the paperwork", "leaving it there", "that's me for tonight"
  const k = items.findIndex((x, m) => x.task !== undefined && !hasObject(items, m));
  if (
    k >= 0 &&
    !/ (tomorrow|next week|later on|i 'll|will|going to|want to|need to|have to) /.test(all) &&
    / (i 'm on|i am on|on to|onto|moving on to|now for|now to|on with|getting on with|back to|back on|back at|straight on to|over to) (the |some )?$/.test(
      wordsOf(items, Math.max(0, k - 5), k),
    )
  ) {
    push(
      { task: items[k]!.task!, at: k, item: items[k]! },
      { mark: 'start' },
      'work.starting',
      [items[k]!],
      Math.max(0, k - 3),
      k + 1,
    );
    return;
  }
  if (
    / (leave|leaving|left) it (there|at that|here) | that 's me (for|done|finished)| that 's (me|it|enough|all) (for|done) (tonight|today|now|the (day|night|evening))| enough for (tonight|today|one|now|the day|one (day|night))|that 'll do (for (me|now|tonight|today|one day|the (day|night|evening))|me)|gave (it|up) up|that 's your lot|shutting up shop|lights out| call it a (day|night)| done for (tonight|today|the (day|night|evening)) | putting it (away|down) for /.test(
      all,
    )
  ) {
    push(
      running ? { task: running } : undefined,
      { mark: 'stop' },
      'work.stopping',
      items,
      0,
      Math.min(items.length, 8),
    );
  }
}

function nearTask(items: Item[], from: number, reach: number): Named | undefined {
  for (let k = from; k < Math.min(items.length, from + reach); k++) {
    const x = items[k]!;
    if (x.task) return hasObject(items, k) ? undefined : { task: x.task, at: k, item: x };
    if (!isLight(x) || x.w === ',' || x.w === 'and') return undefined;
  }
  return undefined;
}
function nearTaskBefore(items: Item[], to: number, reach: number): Named | undefined {
  for (let k = to - 1; k >= Math.max(0, to - reach); k--) {
    const x = items[k]!;
    if (x.task) return hasObject(items, k) ? undefined : { task: x.task, at: k, item: x };
    if (!/^(is|'s|are|was|all|now|,|me|with|that|the|just|got|has|been|i|'m|'ve|nearly)$/.test(x.w))
      return undefined;
  }
  return undefined;
}
/** A kind of work said between the word for starting and its clock: "started on the cutting at nine". */
function between(items: Item[], mark: Mark, k: number): Named | undefined {
  for (let m = Math.min(mark.at, k); m < Math.max(mark.end, k); m++) {
    const x = items[m]!;
    if (x.task && !hasObject(items, m)) return { task: x.task, at: m, item: x };
  }
  for (let m = mark.at - 1; m >= Math.max(0, mark.at - 8); m--) {
    const x = items[m]!;
    if (x.clock || x.span || (x.place && x.place.kind !== 'part')) break;
    if (x.task) return hasObject(items, m) ? undefined : { task: x.task, at: m, item: x };
  }
  for (let m = Math.max(mark.end, k + 1); m < Math.min(items.length, Math.max(mark.end, k) + 7); m++) {
    const x = items[m]!;
    if (x.task) return hasObject(items, m) ? undefined : { task: x.task, at: m, item: x };
    if (!isLight(x) || x.w === ',') break;
  }
  return undefined;
}

/** Work about the work: setting up, oiling the machine, clearing the table. */
function otherTask(items: Item[], k: number): Named | undefined {
  const near = wordsOf(items, k + 1, k + 9);
  const hit =
    /^ (?:(?:before|after) that |spent |just |only |were |was |went |to |on |of |in |for )*(putting the [a-z ]*(?:up|away|together)|setting (?:up|the [a-z ]+ up)|clearing|oiling|tidying|sweeping|sorting|threading|winding|changing the|rethreading|cleaning the machine|packing (?:up|away)|hunting|looking for|untangling|sharpening|fussing|moving the|shifting the|untying knots|fixing the machine|servicing)\b/.exec(
      near,
    );
  if (!hit) return undefined;
  const words = hit[0].trim().split(' ').length;
  const at = Math.min(items.length - 1, k + words);
  return { task: 'other', at, item: items[at]! };
}

/** Verbs of long work, which are said without naming what was worked on. */
const LONG_WORK = new Set<Action>([
  'tie',
  'quilt',
  'piece',
  'cut',
  'darn',
  'resew',
  'remove',
  'baste',
  'bind',
  'patch',
]);
/** "quilted two hours tonight", "unpicked for an hour and ten": time at a kind of work, with nothing named that it was done to. */
function worked(items: Item[], k: number): Named | undefined {
  let at = k - 1;
  while (
    at > 0 &&
    /^(for|about|around|another|a|good|nearly|over|just|away|solid|roughly|like)$/.test(w(items, at))
  )
    at--;
  const task = verbOfWork(items, at);
  return task ? { task, at, item: items[at]! } : undefined;
}

/** The kind of work of the verb at `k`, where nothing is named that it was done to. */
function verbOfWork(items: Item[], k: number): Task | undefined {
  const verb = items[k];
  if (!verb?.action || !LONG_WORK.has(verb.action.v) || verb.action.form === 'base') return undefined;
  if (verb.action.form === 'ing' && verb.task) return undefined;
  if (/^(was|were|is|are|be|been|get|got|gets|is|'s|had|it|that|which)$/.test(w(items, k - 1)))
    return undefined;
  const near = items.slice(Math.max(0, k - 4), Math.min(items.length, k + 5));
  if (
    near.some(
      (x) =>
        // "pieced for a bit", "quilted on it as well"
        !/^(bit|well|good)$/.test(x.w) &&
        !(x.place?.rule === 'place.it' && w(items, k + 1) === 'on' && items[k + 2] === x) &&
        (x.place?.places.length || x.object || x.seam || x.finding || x.fabric || x.stitch),
    )
  )
    return undefined;
  return TASK_OF_ACTION[verb.action.v];
}

const ERRAND =
  / (?:(?:in|into|to|round|around) town|(?:to|at|in|round|from) (?:the )?(?:\w+ )?(?:shops?|stores?|drapers?|haberdashers?|haberdashery|market|mill|mall|merchants?)) /;
/** "an hour and ten in town for thread", "went to the draper's, forty minutes". */
function errand(items: Item[], k: number): Named | undefined {
  const from = Math.max(0, k - 8);
  const lead = items.slice(from, k);
  if (lead.some((x) => x.action || x.place?.places.length || x.duration)) return undefined;
  return ERRAND.test(wordsOf(items, from, k)) || ERRAND.test(wordsOf(items, k + 1, k + 9))
    ? { task: 'shopping', at: k, item: items[k]! }
    : undefined;
}

/** "from", "between", "i was", "at it" before a stretch are said with it. */
function lead(items: Item[], k: number, used: Set<number>): void {
  let m = k - 1;
  while (
    m >= 0 &&
    /^(from|between|was|were|i|'ve|been|at|it|and|went|ran|lasted|to|on|the|worked|today|yesterday|,)$/.test(
      w(items, m),
    ) &&
    k - m <= 4 &&
    // "the binding went on between two and four"
    !(
      w(items, m) === 'on' && items.slice(Math.max(0, m - 3), m).some((x) => isNowOn(items, items.indexOf(x)))
    )
  ) {
    used.add(m);
    m--;
  }
}

/** Both ends of a stretch: the latest that the words can mean, the end not after `now`, the start before the end. */
export function resolve(
  start: ClockFound,
  end: ClockFound,
  now: number,
  day: { start: number; part?: DayFound['part'] } | undefined,
): { startAt: number; endAt: number } {
  const fixedDay = day ? { start: day.start, ...(day.part ? { part: day.part } : {}) } : undefined;
  // "from quarter to two until twenty-five past": the hour that follows the start
  if (end.anyHour && !start.anyHour) {
    const startAt = latestClock(start, now - 1, fixedDay as Parameters<typeof latestClock>[2]);
    return { startAt, endAt: startAt + ((((end.minute - start.minute) % 60) + 60) % 60 || 60) };
  }
  let endAt = latestClock(end, now, fixedDay as Parameters<typeof latestClock>[2]);
  if (day && endAt > now && !end.fixed && end.minute < 780) endAt -= 720;
  const halves =
    start.fixed || start.minute >= 780 ? [start.minute] : [start.minute % 720, (start.minute % 720) + 720];
  // "from ten this morning till two": the morning is the start's
  if (day?.part === 'morning') {
    const startAt = day.start + (start.minute % 720);
    const later = [end.minute % 720, (end.minute % 720) + 720].find(
      (m) => day.start + m > startAt && (!end.fixed || m === end.minute),
    );
    if (later !== undefined && !(start.fixed && start.minute >= 720) && day.start + later <= now)
      return { startAt, endAt: day.start + later };
  }
  const midnight = Math.floor(endAt / 1440) * 1440;
  const options = [midnight - 1440, midnight]
    .flatMap((base) => halves.map((m) => base + m))
    .filter((t) => t < endAt);
  const startAt = options.sort((a, b) => a - b).at(-1) ?? endAt - 1;
  return { startAt, endAt };
}

const lengthOf = (x: Item): number =>
  x.duration
    ? x.duration.minutes
    : (x.quantity?.value ?? 0) < 1
      ? (x.quantity?.value ?? 0) * 60
      : (x.quantity?.value ?? 0);

/** Is the stretch at `k` a break in the work that the rest of the sentence tells: "broke from seven to quarter to eight"? */
const isBreakSpan = (items: Item[], k: number): boolean =>
  / (broke|break|breaking|stopped|stopping|paused|away|out|off|except|bar|less|minus|without|lunch|tea|dinner|supper|apart from|not counting)( off)?( for( my| a| some)? [a-z]+)?( from| between)? $/.test(
    wordsOf(items, k - 6, k),
  ) && items.some((x, m) => m !== k && (x.clock || x.span));

/** The breaks told beside the stretch at `k`: all lengths that are taken off it. */
function breakOf(
  items: Item[],
  k: number,
  used: Set<number>,
  broken: number,
): { minutes: number } | undefined {
  let minutes = broken;
  for (let m = 0; m < items.length; m++) {
    if (m === k || used.has(m) || !isBreak(items, m)) continue;
    // a break that another stretch stands nearer to is that one's
    if (items.some((x, q) => x.span && q !== k && Math.abs(q - m) < Math.abs(k - m) && q < m && q > k))
      continue;
    minutes += lengthOf(items[m]!);
    used.add(m);
    const phrase = wordsOf(items, m + 1, m + 6);
    const tail =
      /^ (off|out|away|break|lost|wasted|on|for|of|at|phone|lunch|tea|smoko|supper|dinner|coffee|cuppa|walk|pause|rest|nap)( (for|on|at|of))?( (my|the|a|an|some))?( [a-z]+)?/.exec(
        phrase,
      );
    if (tail) {
      const n = Math.min(tail[0].trim().split(' ').length, 4);
      for (let q = m + 1; q <= m + n; q++)
        if (items[q] && !items[q]!.place && !items[q]!.action && !items[q]!.duration) used.add(q);
    }
    for (let q = m - 1; q >= Math.max(0, m - 3); q--) {
      if (
        !/^(less|minus|without|with|a|an|about|the|apart|except|from|for|and|bar|,|plus|took|off|not|counting)$/.test(
          w(items, q),
        )
      )
        break;
      used.add(q);
    }
  }
  return minutes ? { minutes } : undefined;
}
