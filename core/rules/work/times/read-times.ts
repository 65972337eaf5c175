import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import type { Task } from '../../../shared/vocabulary.ts';
import { removalAt } from '../clause/removal-at.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import type { Claims, Sentence } from '../read-amounts.ts';
import type { ReaderState } from '../reader-state.ts';
import type { DayFound } from '../times/find-day.ts';
import { latestClock, wallMinutes, wallTime } from '../times/local-time.ts';
import { wordsBetween } from '../words-between.ts';
import { type Push, readBareMarks } from './bare-marks.ts';
import { breakOf, isBreakSpan, lengthOf } from './break-of.ts';
import { clippedMark, clippedTask } from './clipped-mark.ts';
import { isBreak } from './find-work.ts';
import { between, isStillToCome, type Mark, marksOf } from './marks-of.ts';
import { aroundRests, mealMarks, type Piece, resumes, type Timed } from './rests.ts';
import { AT, pastOnly, resolve, type Slots } from './slots.ts';
import {
  errand,
  type Named,
  nearTask,
  otherTask,
  taskNear,
  taskOf,
  verbBefore,
  verbOfWork,
  worked,
} from './task-near.ts';
import { isLengthUnknown, saysNoMore, UNKNOWN_LENGTH, vagueWork } from './vague-work.ts';
import {
  deedIn,
  hasObject,
  isChosen,
  isDeedDone,
  isGoods,
  isLight,
  isSpentAt,
  isWorkedOn,
  lead,
  onlyLight,
} from './work-items.ts';

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
  const all = wordsBetween(items);
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
      .filter(
        (d) =>
          d.index >= first &&
          d.index <= last &&
          (d.index < at || onlyLight(items, k, d.index) || isToldFirst(items, k, d.index)),
      )
      .sort((a, b) => Math.abs(a.index - at) - Math.abs(b.index - at))[0];
    const found =
      within ?? here.filter((d) => d.index < first && d.part === undefined && d.start < now - 1440).at(-1);
    return found ? { start: found.start, ...(found.part ? { part: found.part } : {}) } : undefined;
  };
  const push: Push = (task, slots, rule, on, from, to) => {
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
    const others = items.filter((x, m) => m !== k && (x.span || x.clock));
    if (others.some((x) => x.span) || others.length > 1) {
      broken += endAt - startAt;
      used.add(k);
      lead(items, k, used);
      continue;
    }
    // "tea 8.15–8.40": no stretch that it is taken off, so the work stopped and went on
    const ran = runningIn(state);
    if (!ran && !others.length) {
      used.add(k);
      continue;
    }
    push(ran, { mark: 'stop', time: wallTime(startAt) }, 'work.stop-at', [items[k]!], k, k + 1);
    push(ran, { mark: 'start', time: wallTime(endAt) }, 'work.start-at', [items[k]!], k, k + 1);
    lead(items, k, used);
  }
  let lastEnd: number | undefined;
  for (let k = 0; k < items.length; k++) {
    const span = items[k]!.span;
    if (!span || used.has(k)) continue;
    const task =
      otherTask(items, k) ??
      taskNear(items, k, k + 1) ??
      verbBefore(items, k) ??
      goesOnWith(state, items, k) ??
      ranFrom(items, k) ??
      clippedTask(items, k);
    const between =
      w(items, k - 1) === 'between' &&
      span.start.rule === 'time.hour' &&
      span.end.rule === 'time.hour' &&
      !span.start.fixed &&
      !span.end.fixed;
    if (
      between &&
      !task &&
      !/ (worked|work|at it|sat|on it|was|sewing|did) /.test(wordsBetween(items, k - 5, k))
    )
      continue;
    const { startAt, endAt } = afterLast(resolve(span.start, span.end, now, dayOf(k)), span, lastEnd, now);
    lastEnd = endAt;
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

  // "cutting from ten past one to two, and piecing from then until quarter to three": begun when the other ended
  for (let k = 1; k < items.length; k++) {
    const { clock } = items[k]!;
    const lead = clock && !used.has(k) ? FROM_THEN.exec(wordsBetween(items, k - 5, k)) : null;
    const ended = lead && state.drafts.findLast((d) => d.entry.kind === 'work' && d.entry.end)?.entry;
    if (!lead || ended?.kind !== 'work' || !ended.end) continue;
    const begun = wallMinutes(ended.end);
    const from = k - lead[0].trim().split(' ').length;
    const start = { next: 0, minute: begun % 1440, fixed: true, firm: true, rule: 'time.from-then' };
    const { endAt } = resolve(start, clock!, now, { start: begun - (begun % 1440) });
    if (endAt <= begun || endAt - begun > 720) continue;
    push(
      taskNear(items, from, k + 1) ?? verbBefore(items, from),
      { start: ended.end, end: wallTime(endAt) },
      'work.span',
      [items[k]!],
      from,
      k + 1,
    );
    used.add(k);
  }

  // "nine till noon and one till four on the cutting": the kind of work holds for both
  const own = state.drafts.filter(
    (d) => d.entry.kind === 'work' && d.entry.start && d.sentence === sentence.number,
  );
  const told = own.find((d) => d.entry.kind === 'work' && d.entry.task)?.entry as { task?: Task } | undefined;
  if (told?.task) for (const d of own) if (d.entry.kind === 'work') d.entry.task ??= told.task;

  // 2. Starts and stops with their clock times
  tookTime(items, claims);
  const marks = withMeals(marksOf(items), items, state.memory.running !== undefined);
  if (!marks.length) hoursAndMinutes(items);
  const clocks = items.map((x, k) => (x.clock && !used.has(k) ? k : -1)).filter((k) => k >= 0);
  const timed: TimedMark[] = [];
  // "9.30 start, 11.15 stop": each mark after its clock
  const paired =
    clocks.length > 1 &&
    clocks.length === marks.length &&
    clocks.every((k, n) => k < marks[n]!.at && marks[n]!.at - k <= 3);
  for (const k of clocks) {
    const before = marks
      .filter((m) => m.end <= k && k - m.end <= reachOf(items, m) && !clocks.some((c) => c > m.at && c < k))
      .at(-1);
    const after = marks.find(
      (m) => m.at > k && m.at - k <= (k <= 2 ? 14 : 7) && !clocks.some((c) => c > k && c < m.at),
    );
    let mark = before;
    // "seven o'clock it was when I sat down and half past eight when I got up"
    const when =
      after !== undefined && / when (?:i |we )?(?:\w+ly )?$/.test(wordsBetween(items, k + 1, after.at))
        ? after
        : undefined;
    // "at", "since" and the like tie the clock to what was said before it
    const tied =
      /^(at|since|till|until|til|from|by|around|about|before|after|past|round)$/.test(w(items, k - 1)) ||
      (after !== undefined && clocks.some((c) => c > k && c >= after.end && c - after.end <= 3));
    // "mending 18:40 to now", "tying 13:15-now", "that was three till just now on the binding"
    const tillNow = TILL_NOW.test(wordsBetween(items, k + 1, k + 4));
    if (tillNow) mark = { at: k, end: k + 1, mark: 'start', word: 'from' };
    else if (paired) mark = marks[clocks.indexOf(k)];
    else if (when) mark = when;
    else if (!before || (after && !tied && after.at - k < k - before.end && k - before.end > 2))
      mark = after ?? before;
    const from = w(items, k - 1) === 'from';
    if (from && (!mark || mark.mark === 'stop' || mark.at > k))
      mark = { at: k - 1, end: k, mark: 'start', word: 'from' };
    // "went on to half twelve"
    if (mark?.end === k && /^(go|went|gone|kept|carried|worked) (right |straight )?on to$/.test(mark.word))
      mark = { ...mark, mark: 'stop' };
    // "and didn't get back to it till after two"
    if (
      mark &&
      /^(till|until|til)$/.test(mark.word) &&
      / (?:n't|not|never) (?:\w+ ){0,2}?(?:back|start|started|begin|going|resume|pick|sit|settle)(?: \w+){0,3} $/.test(
        wordsBetween(items, mark.at - 8, mark.at),
      )
    )
      mark = { ...mark, mark: 'start', word: 'back' };
    if (!mark && w(items, k - 1) === 'back') mark = { at: k - 1, end: k, mark: 'start', word: 'back' };
    // "survey 2pm"
    if (
      !mark &&
      k <= 2 &&
      items[0]!.task &&
      k === items.length - 1 &&
      !hasObject(items, 0) &&
      (k === 1 || /^(at|@|-|:|,)$/.test(w(items, 1)))
    )
      mark = { at: 0, end: 1, mark: 'start', word: 'task' };
    // "began looking it over at a quarter to nine and it's nine-thirty now"
    if (
      / it (?:is|'s) (?:about |nearly |just )?$/.test(wordsBetween(items, k - 4, k)) &&
      w(items, k + 1) === 'now' &&
      timed.length === 1 &&
      timed[0]!.mark === 'start'
    )
      mark = { at: k, end: k + 1, mark: 'stop', word: 'till' };
    mark ??= clippedMark(items, k);
    if (!mark) continue;
    if (isStillToCome(items, mark)) continue;
    const near =
      taskNear(items, Math.min(mark.at, k), Math.max(k + 1, mark.end)) ??
      between(items, mark, k) ??
      (/^(till|until|til)$/.test(mark.word) ? verbBefore(items, k) : undefined);
    timed.push({ k, mark: mark.mark, word: mark, task: near, clock: items[k]!.clock! });
  }
  const starts = timed.filter((t) => t.mark === 'start');
  const stops = timed.filter((t) => t.mark === 'stop');
  const pieces = aroundRests(timed, items, now, timed.length ? dayOf(timed.at(-1)!.k) : undefined);
  const nowStop =
    starts.length === 1 &&
    !stops.length &&
    (/ (?:till|until|til|to|-) (?:just |right )?now /.test(all) ||
      // "okay that's it, I'm done, been on this since a quarter after eight"
      isDoneFirst(wordsBetween(items, 0, starts[0]!.word.at)) ||
      // "sat down to the mending at half ten and only getting up from it now"
      / (?:only|just) (?:now )?(?:getting up|got up|getting out of the chair|putting it (?:down|away)|laying it by)(?: from (?:it|that|the \w+))?(?: now)? /.test(
        all,
      ) ||
      marks.some(
        (m) =>
          m.mark === 'stop' &&
          m.at > starts[0]!.k &&
          !/^(till|until|til)$/.test(m.word) &&
          !items.slice(m.end, m.end + 3).some((x) => x.duration) &&
          // herself, or just now: "rows one to three are finished" ends no work
          (!/^(are|is|were|was|'s|'re)$/.test(w(items, m.at - 1)) ||
            // "the mending I started at one is done now"
            (starts[0]!.task !== undefined &&
              / (?:i|we) $/.test(wordsBetween(items, starts[0]!.word.at - 1, starts[0]!.word.at)) &&
              / now $/.test(all))) &&
          (/^(now|here|there|for|)$/.test(w(items, m.end)) ||
            / as of now $/.test(wordsBetween(items, m.end, m.end + 3)) ||
            /^(i|'m|'ve|just|now|me|and|,)$/.test(w(items, m.at - 1)) ||
            /ing( (it|up|off|in))*$/.test(m.word)),
      ));
  if (pieces) pushPieces(pieces, items, push, used, runningIn(state));
  else if (
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
        t.mark === 'start' && resumes(t, items) ? 'work.back-at' : `work.${t.mark}-at`,
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
    if (isStillToCome(items, mark)) continue;
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

  hoursInList(items);

  // 4. Lengths of a named kind of work: "shopping, 50 min", "half an hour on the paperwork"
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.duration || used.has(k)) continue;
    if (
      /^(ago|old|late|early|later|from|apart)$/.test(w(items, k + 1)) ||
      (/^(another|every|in|within)$/.test(w(items, k - 1)) &&
        !/^(put|squeezed|got|fitted|managed|fit|crammed|did|put in|of)$/.test(w(items, k - 2)) &&
        // "in fifty minutes of shopping I purchased three yards of muslin"
        !(w(items, k - 1) === 'in' && w(items, k + 1) === 'of' && items[k + 2]?.task === 'shopping') &&
        // "another forty minutes on the binding"
        !(w(items, k - 1) === 'another' && nearTask(items, k + 1, 4)))
    )
      continue;
    if (isBreak(items, k) && items.some((x) => x.span || x.clock)) continue;
    // "took forty minutes to take the binding off": the treatment's own
    if (w(items, k + 1) === 'to' && / (took|take|taken) /.test(wordsBetween(items, k - 4, k))) continue;
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
    // "2 hours on 19 July", "an hour and a half last night": how long, and the day
    if (!task && isLengthOnADay(items, days)) {
      push(runningIn(state), { minutes: item.duration.minutes }, 'work.length', items, 0, items.length);
      continue;
    }
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
    // "the vacuuming alone took 35 minutes"
    if (task.at < k && w(items, task.at + 1) === 'alone') continue;
    // "fifty minutes for the vacuuming alone" is the length of the treatment just told
    if (
      task.at > k &&
      (w(items, task.at + 1) === 'alone' ||
        (/ (just|only) (for )?(the )?$/.test(wordsBetween(items, task.at - 3, task.at)) &&
          task.task !== 'other'))
    )
      continue;
    // "vacuumed it all and the vacuuming took half an hour": of what was just told as done
    if (task.at < k && tookOwnLength(items, task.at, k)) continue;
    // "finished the binding, ladder stitch, two hours": the treatment's own length
    if (
      task.at < k &&
      /^(finished|done|did|completed)$/.test(w(items, task.at - 1).replace(/^the$/, w(items, task.at - 2)))
    ) {
      if (/^(binding|tying|quilting)$/.test(task.task) && items.some((x) => x.stitch || x.weakStitch))
        continue;
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

  // "40m unpick", "1 hr bind", "inv 15m": a length and the work in short
  const short = workInShort(items);
  if (short && !used.has(short.at))
    push(short.task, { minutes: short.minutes }, 'work.length', items, 0, items.length);

  // 5. Work whose time nobody knows: "i did some piecing over the weekend, couldn't tell you how long"
  const next = following && following.items.length <= 8 ? wordsBetween(following.items, 0, 8) : ' ';
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
      unknown && !length && !matter
        ? items.findIndex((x, k) => !x.deed && taskOf(items, k) !== undefined)
        : -1;
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

/** "half past ten I stopped at last night", "half four it was when I finished yesterday": the clock, what it was of, and the day. */
const isToldFirst = (items: Item[], k: number, day: number): boolean =>
  TOLD_FIRST.test(
    wordsBetween(
      items,
      k + 1,
      items.findIndex((x, m) => m > k && x.token.from >= day),
    ),
  );
const TOLD_FIRST =
  /^ (?:(?:it|that) (?:was|is) )?(?:when |that )?(?:i|we) (?:'d )?(?:stopped|finished|started|began|quit|left|knocked|packed|gave)(?: (?:it|off|up|in|at|on|work|working|the|\S+ing))* $/;

/** "…, the vacuuming alone took thirty-five minutes": how long one treatment took that the same sentence tells as done. */
function tookOwnLength(items: Item[], at: number, length: number): boolean {
  const action = items[at]!.action;
  return (
    action?.form === 'ing' &&
    TOOK.test(wordsBetween(items, at + 1, length)) &&
    items.slice(0, at).some((x) => x.action?.v === action.v && x.action.form === 'past')
  );
}
const TOOK =
  /^ (?:(?:alone|itself|by itself|all|part|bit|me) )*(?:took|was|ran to|came to|lasted)(?: (?:me|about|just|only|nearly|over|a good|all of))* $/;

/** "beginning the survey of the coverlet from the costume store at 09:40": further, where nothing else is told between. */
const reachOf = (items: Item[], m: Mark): number => {
  const next = items.slice(m.end, m.end + 15);
  const other = next.findIndex((x) => x.w === ',' || x.w === 'and' || (x.action && !x.task) || x.finding);
  return other < 0 ? 14 : Math.max(9, other);
};

const SHORT_TASKS: Record<string, Task> = {
  inv: 'paperwork',
  invoice: 'paperwork',
  emails: 'paperwork',
  email: 'paperwork',
  shop: 'shopping',
  mend: 'mending',
  layer: 'layering',
};
function workInShort(items: Item[]): { task: Named; minutes: number; at: number } | undefined {
  const said = items.filter((x) => !/^[:,=-]$/.test(x.w));
  const length = said.find((x) => x.duration);
  const other = said.find((x) => x !== length);
  if (said.length !== 2 || !length || !other) return undefined;
  const task =
    SHORT_TASKS[other.w] ??
    (other.action?.form === 'base' && !other.task && !other.part
      ? TASK_OF_ACTION[other.action.v]
      : undefined);
  const at = items.indexOf(other);
  return task && { task: { task, at, item: other }, minutes: length.duration!.minutes, at };
}

/** "yesterday 2-4 and 7-9": of two stretches in a list the second is the later. */
function afterLast(
  told: { startAt: number; endAt: number },
  { start, end }: { start: { fixed: boolean }; end: { fixed: boolean } },
  last: number | undefined,
  now: number,
): { startAt: number; endAt: number } {
  const { startAt, endAt } = told;
  return last === undefined ||
    startAt >= last ||
    start.fixed ||
    end.fixed ||
    startAt + 720 < last ||
    endAt + 720 > now
    ? told
    : { startAt: startAt + 720, endAt: endAt + 720 };
}

const FROM_THEN =
  / (?:from (?:then|there|that)(?: on)?|(?:and )?then|(?:and )?after that|from when that ended) (?:on )?(?:until|till|til|to|up to|through to) $/;
const TILL_NOW = /^ (?:to|till|until|til|-) (?:just |right )?now /;
const isDoneFirst = (lead: string): boolean =>
  / (?:done|finished|stopping|packing|knocking|calling|through|that 's (?:it|me|us|enough)) /.test(lead) &&
  DONE_FIRST.test(lead);
const DONE_FIRST =
  /^ (?:(?:okay|ok|right|so|well|and|oh|phew|there|,) )*(?:that 's (?:it|that|me|us|all|enough)(?: ,)? )?(?:(?:for (?:today|tonight|now|me)|then|now|folks|,) )*(?:(?:i 'm|i am|me|we 're|all)? ?(?:done|finished|stopping|off|packing (?:it )?(?:in|up)|knocking off|calling it(?: a (?:day|night)| quits)?|through)(?: (?:for (?:today|tonight|now|the (?:day|night|evening))|here|there|now|,))* )?(?:, )?(?:(?:(?:i 've )?been|i was|was|were|had been) )?(?:(?:on|at) (?:it|this|that|the \S+) )?$/;

type TimedMark = Timed & { task: Named | undefined };

/** Marks of a sentence in order, with the meals and rests for which work is stopped at a clock. */
function withMeals(marks: Mark[], items: Item[], running: boolean): Mark[] {
  if (!items.some((x) => x.clock)) return marks;
  const meals = mealMarks(items)
    // a meal alone stops nothing that does not run
    .filter(
      (m) =>
        marks.length ||
        running ||
        /^(on|off|in|out|back)$/.test(m.word) ||
        items.filter((x) => x.clock).length > 1,
    )
    .filter((m) => !marks.some((x) => x.at < m.end && x.end > m.at));
  return meals.length ? [...marks, ...meals].sort((a, b) => a.at - b.at) : marks;
}

/** Is nothing told but a length of time and the day it was on? */
const isLengthOnADay = (items: Item[], days: DayFound[]): boolean => {
  const dayAt = (x: Item): boolean =>
    days.some((d) => x.token.from >= d.index && x.token.from < d.index + d.length);
  return (
    items.some(dayAt) &&
    items.every(
      (x) =>
        x.duration ||
        dayAt(x) ||
        /^(on|of|,|and|about|around|just|over|a|good|nearly|i|did|put|in|was|it|that|then|work|so|all|told|total|altogether)$/.test(
          x.w,
        ),
    )
  );
};

/** The kind of work that runs before this sentence: told in the note, or before it. */
function runningIn(state: ReaderState): { task: Task } | undefined {
  const told = state.drafts.findLast((d) => d.entry.kind === 'work' && d.entry.task)?.entry as
    | { task?: Task }
    | undefined;
  const task = told?.task ?? state.memory.running ?? state.memory.ran;
  return task && { task };
}

function pushPieces(
  pieces: Piece<TimedMark>[],
  items: Item[],
  push: Push,
  used: Set<number>,
  ran: { task: Task } | undefined,
): void {
  const task =
    pieces.map((p) => ('only' in p ? p.only.task : (p.from.task ?? p.to.task))).find(Boolean) ?? ran;
  const cover = (t: TimedMark): void => {
    for (let k = Math.min(t.word.at, t.k); k < Math.max(t.word.end, t.k + 1); k++) used.add(k);
  };
  for (const p of pieces) {
    const first = 'only' in p ? p.only : p.from;
    const from = Math.min(first.word.at, first.k);
    const to = Math.max(first.word.end, first.k + 1);
    if ('only' in p) {
      push(
        p.only.task ?? task,
        { mark: p.only.mark, time: wallTime(p.at) },
        `work.${p.only.mark}-at`,
        [items[p.only.k]!],
        from,
        to,
      );
      continue;
    }
    const minutes = p.rest ? { minutes: p.endAt - p.startAt - p.rest } : {};
    push(
      task,
      { start: wallTime(p.startAt), end: wallTime(p.endAt), ...minutes },
      'work.around-rests',
      [items[p.from.k]!, items[p.to.k]!],
      from,
      to,
    );
    cover(p.to);
  }
  // the rest itself is told with it
  for (let n = 0; n < items.length; n++) if (items[n]!.clock) used.add(n);
}

/** "the overlay ran from 10.55 to 13.00", "the wash took from one till two": the kind of work of what was done. */
function ranFrom(items: Item[], k: number): Named | undefined {
  let at = k - 1;
  while (at > 0 && /^(from|between|me|on|us|was)$/.test(w(items, at))) at--;
  if (!/^(ran|run|went|took|lasted|occupied|kept|is|was)$/.test(w(items, at))) return undefined;
  const deed = items[at - 1];
  const task = deed?.action && !deed.part && TASK_OF_ACTION[deed.action.v];
  return task && /^(the|that|my|,|and|)$/.test(w(items, at - 2))
    ? { task, at: at - 1, item: deed }
    : undefined;
}

/** "carried on with that, seven to nine", "more of the same": the work that ran last. */
function goesOnWith(state: ReaderState, items: Item[], k: number): { task: Task } | undefined {
  const ran = state.memory.running ?? state.memory.ran;
  return ran !== undefined &&
    /^ (?:(?:and|so|then|i|we|just) )*(?:(?:carried|carrying|kept|keeping|went|going|cracked) on(?: with| at)? (?:that|it|this|the same)|more of (?:that|the same|it)|same again|(?:the )?same|back (?:to|at|on) (?:it|that)|at it again)(?: again| tonight| today| this morning| this afternoon)*(?: ,| :| -)? (?:from )?$/.test(
      wordsBetween(items, 0, k),
    )
    ? { task: ran }
    : undefined;
}

/** "I was out shopping, I never noticed how long, and came home with two packs of pins": where something else is told. */
function endOfUnknown(items: Item[], task: number): number {
  for (let k = task + 1; k < items.length; k++) {
    if (!/^(,|and|but)$/.test(w(items, k))) continue;
    if (!UNKNOWN_LENGTH.test(wordsBetween(items, 0, k))) continue;
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
  const reach = / the (?:best|better) part of $/.test(wordsBetween(items, length - 5, length)) ? 7 : 4;
  const took = items.slice(Math.max(0, length - reach), length).findIndex((x) => /^(took|taken)$/.test(x.w));
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
    const at = Math.max(0, length - reach) + took;
    const verb = items.slice(0, at).findLastIndex((x) => x.action?.form === 'ing');
    const said = items.slice(verb + 1, at);
    if (
      verb >= 0 &&
      said.some((x) => x.place || x.seam || x.object || x.material) &&
      !said.some((x) => x.action) &&
      !isWhatComesOff(items, verb)
    )
      done(verb);
    return;
  }
  // "darn 2-2 15 min": an order to nobody, for it has its time
  if (
    items[0]!.action?.form === 'base' &&
    items[1]?.place?.kind === 'blocks' &&
    length <= 5 &&
    !/ (?:tomorrow|later|next|need|needs|will|'ll|should|maybe|est|guess|reckon|to) /.test(
      wordsBetween(items),
    )
  )
    done(0);
  const last = items.length - 1;
  if (
    items[last]!.action?.form === 'ing' &&
    w(items, last - 1) === ',' &&
    items.some((x) => x.place?.kind === 'blocks')
  )
    done(last);
}

/** "unpicked the old quilting on row one, that took an hour": what is taken out, and no work that took its time. */
const isWhatComesOff = (items: Item[], verb: number): boolean => {
  let k = verb - 1;
  while (k > 0 && /^(the|all|of|that|old|out|off|its|up|some|most)$/.test(w(items, k))) k--;
  return k >= 0 && items[verb]!.object !== undefined && removalAt(items, k) !== undefined;
};

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

/** "two hours of mending and one of cutting": hours as well; "50 min cutting, 35 piecing": minutes. */
function hoursInList(items: Item[]): void {
  for (let k = items.findIndex((x) => x.duration) + 1; k > 0 && k < items.length - 1; k++) {
    const { quantity } = items[k]!;
    const minutes = quantity?.value;
    if (minutes === undefined || quantity!.unit || minutes < 5 || minutes > 59 || minutes % 5) continue;
    const named = items[k + 1]!;
    if (!named.task || named.material || !(items[k - 1]!.task || /^(,|and|&)$/.test(w(items, k - 1))))
      continue;
    items[k]!.duration = { next: quantity!.next, minutes, rule: 'time.minutes' };
    delete items[k]!.quantity;
  }
  const first = items.findIndex((x) => x.duration?.rule === 'time.hours');
  if (first < 0) return;
  for (let k = first + 2; k < items.length; k++) {
    const item = items[k]!;
    const value = item.quantity?.value;
    if (value === undefined || value > 9 || item.quantity!.unit || !/^(,|and|&|plus)$/.test(w(items, k - 1)))
      continue;
    const named = items.slice(k + 2, k + 4).some((x) => x.task);
    if (!named || !/^(of|on|at|for)$/.test(w(items, k + 1))) continue;
    item.duration = { next: item.quantity!.next, minutes: value * 60, rule: 'time.hours' };
    delete item.quantity;
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
        !isWorkedOn(list, k) &&
        // "the binding" may be the thing
        (!x.part ||
          list.length <= 3 ||
          / (on|at|of|doing|was|all|just) (the |my )?$/.test(wordsBetween(list, k - 2, k))),
    );
  const timeless = (list: Item[]): boolean => !list.some((x) => x.clock || x.span || x.duration);
  let found: Item | undefined;
  const here = named(items);
  // "Put it down as survey."
  const booked =
    following &&
    / (?:put|log|call|book|count|enter|mark|class|say) (?:it|that|them|this|those)(?: down| in)?(?: as| under| to| for)? /.test(
      wordsBetween(following.items, 0, 9),
    );
  if (
    new Set(here.map((x) => x.task)).size === 1 &&
    !items.some((x) => x.action?.form === 'past' || x.finding)
  )
    found = here[0];
  else if (
    !here.length &&
    following &&
    timeless(following.items) &&
    !booked &&
    !/ (next|tomorrow|then|will|'ll|later|to) /.test(wordsBetween(following.items, 0, 5))
  )
    found = named(
      following.items,
      Math.max(1, following.items.findIndex((x) => !isLight(x) && !/^(all|most|both|half)\b/.test(x.w)) + 1),
    )[0];
  if (!found && booked) found = named(following.items)[0];
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
