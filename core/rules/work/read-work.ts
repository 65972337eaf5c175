import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import type { Action, Task } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, isNoAmount, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { unique } from '../places/grid.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isBreak, taskIn } from './find-work.ts';
import { isBareLength, isOneAct, likeDeeds } from './like-deeds.ts';
import { isMeantFor } from './meant-for.ts';

const SEVERAL =
  / (both|together|tog|all told|altogether|all in|all up|in all|the lot|whole business|whole lot|all of (it|that|them)|total|for it all|everything|between them|(?:the|those|these) (two|three|four|pair|2|3|4)|(two|three|both) jobs) /;
const CORRECTED =
  / (call it|make it|make that|say|more like|nearer|no|not|sorry|well) (about |a |an |more like )?$/;

/**
 * Lengths of time that a named kind of work did not take already: the minutes of one treatment, work of several together, or
 * of whatever is running.
 */
export function readDurations(
  state: ReaderState,
  clause: Clause,
  v: { index: number; sentence: number; items: Item[] },
  made: Draft[],
  sentenceItems: Item[],
): void {
  const { items } = clause;
  lengthBefore(state, v, made);
  if (!made.length && lengthAhead(items) && deedFollows(state, v.index)) return;
  const words = ` ${items.map((x) => x.w).join(' ')} `;
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.duration) continue;
    const at = sentenceItems.indexOf(item);
    if (isBreak(sentenceItems, at)) continue;
    const before = items[k - 1]?.w ?? '';
    const after = items[k + 1]?.w ?? '';
    if (/^(ago|old|later|from|early|late|before|away|since|apart|left)$/.test(after)) continue;
    // "the bread needs two hours"
    if (/^(needs?|wants?)$/.test(before)) continue;
    // "dries in two hours", "every ten minutes": no time at work
    if (
      /^(in|another|every|within)$/.test(before) &&
      // "put in an hour"
      !/^(put|putting|got|get)$/.test(items[k - 2]?.w ?? '') &&
      !/^(total|all)$/.test(after) &&
      !made.length &&
      !(
        before === 'in' &&
        state.drafts.some(
          (d) => d.entry.kind === 'treatment' && d.entry.state === 'done' && d.sentence === clause.sentence,
        )
      )
    )
      continue;
    let minutes = item.duration.minutes;
    // "an hour and ten, less a quarter for tea"
    const less = sentenceItems.slice(at + 1).find((_x, q) => isBreak(sentenceItems, at + 1 + q));
    if (less)
      minutes -= less.duration
        ? less.duration.minutes
        : less.quantity!.value! < 1
          ? less.quantity!.value! * 60
          : less.quantity!.value!;
    if (!(minutes > 0)) continue;
    const done = state.drafts.filter(
      (d) =>
        d.entry.kind === 'treatment' &&
        (d.entry.state === 'done' || d.entry.state === 'doing') &&
        // what is left as it is takes no time
        d.entry.action !== 'leave' &&
        // "3-2 done, 8 min", "seen to that now. 12 min": what it was is asked for
        (d.entry.action ||
          d.clause === v.index ||
          (state.drafts.length === 1 && d.origins['state']?.rule === 'treatment.unsaid')),
    );
    const near = done.filter((d) => d.sentence === clause.sentence);
    // three dots are three stops: "in herringbone ... plain running stitch, sixteen minutes"
    const last = done.at(-1)?.sentence ?? -1;
    const pool = near.length ? near : done.filter((d) => d.sentence === last && last >= clause.sentence - 4);
    const lead = ` ${items
      .slice(Math.max(0, k - 4), k)
      .map((x) => x.w)
      .join(' ')} `;
    if (CORRECTED.test(lead)) {
      const told = done.filter((d) => (d.entry as { minutes?: number }).minutes).at(-1);
      if (told) {
        setMinutes(told, minutes, item);
        continue;
      }
    }
    // "fifty minutes just for the darning", "for the vacuuming alone"
    const forOne =
      (/ (just|only|alone) | for the [a-z]+ing | the [a-z]+ing on /.test(words)
        ? pool.find((d) => isOf(d, items.slice(k + 1, k + 9)))
        : undefined) ?? (SEVERAL.test(words) ? undefined : tookIts(items, k, pool));
    if (forOne) {
      setMinutes(forOne, minutes, item);
      continue;
    }
    const open = pool.filter((d) => !(d.entry as { minutes?: number }).minutes);
    // "washed the top. lined 2-2 and 2-4, 50 minutes for the two": the two places of the one deed
    // "pressed 3-3. darned 6-2 and 6-3. 45 minutes for those two": as many as are pointed at
    const counted = THOSE.exec(words)?.[1];
    const inOne =
      open.length === 1 &&
      (near.length > 0 || (counted !== undefined && isAtSoMany(open[0]!, counted))) &&
      isAtSeveral(open[0]!) &&
      !JOBS.test(words);
    const all = SEVERAL.test(words)
      ? open.length > 1 || inOne
        ? open
        : done.filter((d) => !(d.entry as { minutes?: number }).minutes)
      : open;
    const here = open.filter((d) => d.clause === v.index);
    const alone = / (alone|that one|that took|just that|for that|it took|that was) /.test(words);
    if (all.length > 1 && (SEVERAL.test(words) || (here.length > 1 && !alone))) {
      const actions = unique(all.map((d) => (d.entry as { action?: Action }).action));
      // "darned 5-3 and did the same on the next two, all three together took forty minutes": one act
      if (isOneAct(all)) {
        for (const d of all) setMinutes(d, minutes, item);
        continue;
      }
      if (SEVERAL.test(words) || actions.length > 1) {
        state.drafts.push(timeOfSeveral(v, taskNamed(items) ?? taskOfSeveral(actions), minutes, item));
        continue;
      }
    }
    // "2-2: interfacing behind. 3-3 & 4-4 likewise. 40 min": a sentence of its own behind what goes on with the same deed
    const chain = !near.length && !alone && isBareLength(items, k) ? likeDeeds(done) : [];
    if (chain.length > 1) {
      for (const d of chain) setMinutes(d, minutes, item);
      continue;
    }
    // "pressed and trimmed the top in 40 minutes": two verbs of one thing
    const twins =
      here.length === 1 &&
      // "layered and pinned up, 1 hr 40"
      (/ in (?:about |around |under |just |only )?$/.test(lead) || (/ , $/.test(lead) && !items[k + 1]))
        ? twinsOf(state, here[0]!)
        : [];
    if (twins.length > 1) {
      const action = (twins[0]!.entry as { action?: Action }).action;
      state.drafts.push(timeOfSeveral(v, taskNamed(items) ?? TASK_OF_ACTION[action!], minutes, item));
      continue;
    }
    const one = here.length === 1 ? here[0] : (here.at(-1) ?? open.at(-1));
    if (one) {
      setMinutes(one, minutes, item);
      continue;
    }
    if (
      !pool.length &&
      !made.length &&
      !isMeantFor(items, k) &&
      (isAllThatIsTold(items, k) ||
        / (worked|work|spent|put in|(at|on) (it|this|that)|sat|session|stint|solid|today|tonight|yesterday|this (morning|afternoon|evening)|last night|so far) /.test(
          words,
        ))
    )
      state.drafts.push(
        makeDraft(
          'work',
          v,
          {
            task: [state.memory.running, 'work.task', undefined, 'implied'],
            minutes: [minutes, item.duration.rule, item],
          },
          'unneeded',
        ),
      );
  }
}

const JOBS = / (?:jobs|things|tasks|lots|bits) /;

/** Was it done at more than one place? */
const THOSE = / (?:those|these) (two|three|four) /;
/** At two, three or four blocks; a seam is one thing between two. */
const isAtSoMany = ({ entry: e }: Draft, counted: string): boolean =>
  e.kind === 'treatment' &&
  e.action !== 'resew' &&
  e.places?.length === ['two', 'three', 'four'].indexOf(counted) + 2;
const isAtSeveral = ({ entry: e }: Draft): boolean => e.kind === 'treatment' && (e.places?.length ?? 0) > 1;

/** Does the next clause of the sentence tell what was done? */
function deedFollows(state: ReaderState, index: number): boolean {
  const next = state.clauses[index + 1];
  return (
    next?.sentence === state.clauses[index]!.sentence && next.items.some((x) => x.action?.form === 'past')
  );
}

/** The treatment of the clause before and this one, where its verb stood alone: "washed and dried it". */
function twinsOf(state: ReaderState, last: Draft): Draft[] {
  const before = state.clauses[last.clause - 1];
  if (before?.sentence !== last.sentence || !/^(?:and|&|\+)$/.test(state.clauses[last.clause]!.joint))
    return [];
  // what both are done to stands in both
  const shared = new Set(state.clauses[last.clause]!.items);
  if (!before.items.every((x) => x.action || shared.has(x) || /^(i|we|'ve|and|so|then|just|also)$/.test(x.w)))
    return [];
  const first = state.drafts.filter((d) => d.clause === last.clause - 1 && d.entry.kind === 'treatment');
  return first.length === 1 ? [first[0]!, last] : [];
}

/** "35 mins on 5-5, patched it", "an hour on the backing: pressed it": the length stands before what took it, with nothing but where. */
function lengthBefore(state: ReaderState, v: { index: number; sentence: number }, made: Draft[]): void {
  const before = state.clauses[v.index - 1];
  const [one] = made;
  if (before?.sentence !== v.sentence || made.length !== 1 || one!.entry.kind !== 'treatment') return;
  if (one!.entry.minutes !== undefined || !/^(done|doing)$/.test(one!.entry.state ?? '')) return;
  if (state.clauses[v.index + 1]?.items.some((x) => x.action?.form === 'past')) return;
  const told = before.items.find((x) => x.duration);
  if (!told || state.drafts.some((d) => d.clause === v.index - 1)) return;
  const on = before.items.indexOf(told) + 1;
  // "in ten minutes I'd closed the seam"
  const within =
    (before.items[0]?.w === 'in' && on === 2 && before.items.length === 2) ||
    // "it took me an hour and a half | took the binding off"; "…, which took ten minutes" is of what was told before it
    (before.joint !== 'which' &&
      !state.drafts.some(
        (d) =>
          d.sentence === v.sentence && d.entry.kind === 'treatment' && d.clause >= 0 && d.clause < v.index,
      ) &&
      (/ took (?:me |us )?(?:\w+ ){0,2}$/.test(wordsBetween(before.items, 0, on - 1)) ||
        // "three quarters of an hour it took, patching five two"
        / (?:it|that) took (?:me |us )?$/.test(wordsBetween(before.items, on)))) ||
    // "25 min: herringboned muslin in behind 3-1"
    (state.clauses[v.index]!.joint === ':' &&
      on === before.items.length &&
      before.items.every((x) => x === told || LEADS_LENGTH.test(x.w)));
  if (within) setMinutes(one!, told.duration!.minutes, told);
  if (
    !/^(on|at|for|with|over)$/.test(before.items[on]?.w ?? '') ||
    !before.items.slice(on).some((x) => x.place)
  )
    return;
  if (before.items.every((x) => x === told || x.place || x.seam || x.finding || LEADS_LENGTH.test(x.w)))
    setMinutes(one!, told.duration!.minutes, told);
}
const LEADS_LENGTH =
  /^(about|around|nearly|just|over|another|spent|a|good|solid|i|we|'ve|on|at|for|with|over|the|and|,|&|in|of|was|so)$/;

/**
 * "an hour and a half for the both of them I layered it and then basted it", "forty minutes just on this one thing I sewed …": a
 * length in a clause of its own, of what comes next in its sentence.
 */
export function readLengthsAhead(state: ReaderState): void {
  for (const [index, { items, sentence }] of state.clauses.entries()) {
    const ahead = lengthAhead(items);
    if (!ahead || state.drafts.some((d) => d.sentence === sentence && d.clause < index && d.clause >= 0))
      continue;
    const { told, one } = ahead;
    // told by itself it was taken for time at work, told right before a verb for that deed's alone
    const work = state.drafts.filter((d) => d.clause === index && d.entry.kind === 'work');
    if (work.some((d) => d.entry.kind === 'work' && d.entry.mark)) continue;
    const next = state.drafts.filter(
      ({ entry: e, clause, sentence: n }) =>
        e.kind === 'treatment' &&
        /^(done|doing)$/.test(e.state ?? '') &&
        (e.minutes === undefined || (clause === index && e.minutes === told.duration!.minutes)) &&
        n === sentence &&
        clause >= index,
    );
    const [first] = next;
    if (!first) continue;
    // "…for the two jobs: layered it; then basted it"
    if (!one && next.length === 1)
      next.push(
        ...state.drafts.filter(
          ({ entry: e, clause, sentence: n }) =>
            e.kind === 'treatment' &&
            e.state === 'done' &&
            e.minutes === undefined &&
            n === sentence + 1 &&
            state.clauses[clause]?.joint === ';',
        ),
      );
    state.drafts = state.drafts.filter((d) => !work.includes(d));
    if (one || next.length === 1) {
      setMinutes(first, told.duration!.minutes, told);
      continue;
    }
    for (const d of next) if (d.entry.kind === 'treatment') delete d.entry.minutes;
    const { action } = first.entry as { action?: Action };
    const task = action && TASK_OF_ACTION[action];
    state.drafts.push(timeOfSeveral({ index, sentence, items }, task, told.duration!.minutes, told));
  }
}

/** The kind of work that several deeds are together: mending, where one of them is, and else that of the first. */
const taskOfSeveral = (actions: (Action | undefined)[]): Task | undefined => {
  const tasks = actions.flatMap((a) => (a && TASK_OF_ACTION[a]) || []);
  return tasks.includes('mending') ? 'mending' : tasks[0];
};

/** The length that a clause begins with, before any deed, where it says whether it is that of one or of several. */
function lengthAhead(items: Item[]): { told: Item; one: boolean } | undefined {
  const at = items.findIndex((x) => x.duration);
  if (at < 0) return undefined;
  let to = items.findIndex((x) => !x.duration && x.place?.kind !== 'pointer' && !AHEAD.test(x.w));
  if (to < 0) to = items.length;
  // "an hour between them, 3-4 patched and 2-1 darned"
  const deed = (k: number): boolean =>
    items[k]!.action?.form === 'past' ||
    (items[k]!.place?.kind === 'blocks' && items[k + 1]?.action?.form === 'past');
  if (to <= at || (to < items.length && !deed(to))) return undefined;
  const words = ` ${items
    .slice(0, to)
    .map((x) => x.w)
    .join(' ')} `;
  const one = FOR_ONE.test(words);
  return one || SEVERAL.test(words) ? { told: items[at]!, one } : undefined;
}
const AHEAD =
  /^(that|it|was|were|took|me|so|and|,|um|right|ok|well|i|spent|had|'s|about|around|nearly|just|only|over|another|a|good|solid|on|at|for|with|the|this|these|of|in|all|told|altogether|together|between|total|both|two|three|pair|lot|them|one|things?|jobs?|bits?|alone|now|only)$/;
const FOR_ONE =
  / (?:this|that|the|just|one|single) (?:one|thing|job|bit|alone|only)(?: thing| job| bit| alone)? | alone |^ (?:that (?:was|'s) )?(?:\S+ ){1,4}it took (?:me )?$/;

const AT_IT =
  /^(i|i've|'ve|we|so|right|okay|ok|um|well|and|just|only|about|around|maybe|nearly|over|another|did|done|put in|put|in|managed|got|gave|gave it|it|that|a good|good|solid|more|all|told|in all|,|\.)$/;

/** "did two hours", "only managed half an hour", "put in an hour": a length, and that it was worked, and nothing else. */
const isAllThatIsTold = (items: Item[], k: number): boolean =>
  items.some((x) => /^(did|done|put|put in|managed|got|gave|gave it)$/.test(x.w)) &&
  items.every((x, m) => m === k || AT_IT.test(x.w));

/** "the vacuuming alone took thirty-five minutes", "darning was half an hour": the treatment that is the subject. */
function tookIts(items: Item[], k: number, pool: Draft[]): Draft | undefined {
  if (!items.slice(Math.max(0, k - 5), k).some((x) => /^(took|was|ran|came|lasted)$/.test(x.w)))
    return undefined;
  const subject = items.slice(0, k).findLast((x) => x.action?.form === 'ing');
  return subject && pool.findLast((d) => (d.entry as { action?: Action }).action === subject.action!.v);
}

/** Is the treatment what these words speak of: "the vacuuming", "for the sewing on"? */
function isOf(d: Draft, items: Item[]): boolean {
  const action = (d.entry as { action?: Action }).action;
  return items.some(
    (x) =>
      x.action?.v === action ||
      (x.task && action && TASK_OF_ACTION[action] === x.task) ||
      (/^(sewing|putting|stitching)$/.test(x.w) && (action === 'add-border' || action === 'bind')),
  );
}

/** The task that is named; "went over it in zigzag" is a deed, and no looking over. */
const taskNamed = (items: Item[]): Task | undefined =>
  taskIn(
    items.filter(
      (x, k) =>
        !(/^went over/.test(x.w) && items.slice(k).some((y) => y.stitch)) &&
        // "darned 2-4 and took the binding off": a thing
        !(x.part && items[k + 1]?.w === 'off'),
    ),
  )?.task;

/** One length for several treatments: time at work of its own. */
const timeOfSeveral = (v: ClauseView, task: Task | undefined, minutes: number, item: Item): Draft =>
  makeDraft(
    'work',
    v,
    {
      task: [task, 'work.of-treatments', undefined, 'implied'],
      minutes: [minutes, item.duration!.rule, item],
    },
    'unneeded',
  );

function setMinutes(draft: Draft, minutes: number, item: Item): void {
  if (isNoAmount('minutes', minutes)) return;
  (draft.entry as { minutes?: number }).minutes = minutes;
  draft.origins['minutes'] = {
    rule: item.duration?.rule ?? 'time.minutes',
    how: 'said',
    from: item.token.from,
    to: item.end ?? item.token.to,
  };
}

/** "started tying row one": the treatment is in hand, and the work of its kind has begun. */
export function readBegun(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  words: string,
  made: Draft[],
): void {
  if (!/ (starting|started|start|beginning|began|begun|making a start|got going|getting going) /.test(words))
    return;
  if (/ (to start|before|when|until|from the start|starting with|starting (at|from)) /.test(words)) return;
  if (state.drafts.some((d) => d.entry.kind === 'work' && d.sentence === v.sentence)) return;
  const doing = made.find((d) => d.entry.kind === 'treatment' && d.entry.state === 'doing')?.entry as
    | { action?: Action }
    | undefined;
  const task = doing?.action ? TASK_OF_ACTION[doing.action] : undefined;
  if (!task) return;
  state.drafts.push(
    makeDraft(
      'work',
      v,
      {
        task: [task, 'work.implied-task', undefined, 'implied'],
        mark: ['start', 'work.starting', undefined, 'said'],
      },
      'unneeded',
    ),
  );
}
