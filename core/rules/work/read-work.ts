import type { Action } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { unique } from '../places/grid.ts';
import type { ReaderState } from '../reader-state.ts';
import { isBreak, TASK_OF_ACTION, taskIn } from './find-work.ts';

/** Lengths of time: the minutes of one treatment, or work of a named task or of several treatments together. */
export function readDurations(
  state: ReaderState,
  clause: Clause,
  v: { index: number; sentence: number; items: Item[] },
  made: Draft[],
  sentenceItems: Item[],
): void {
  for (let k = 0; k < clause.items.length; k++) {
    const item = clause.items[k]!;
    if (!item.duration) continue;
    const at = sentenceItems.indexOf(item);
    if (isBreak(sentenceItems, at) && sentenceItems.some((x) => x.span || x.clock)) continue;
    if (
      /^(ago|old|later|from|early|late|before|away|or so ago|since|apart|left|to go)$/.test(
        clause.items[k + 1]?.w ?? '',
      ) ||
      (/^(in|for another|every|within)$/.test(clause.items[k - 1]?.w ?? '') &&
        !/^(total|all)$/.test(clause.items[k + 1]?.w ?? ''))
    ) {
      if (!(clause.items[k - 1]?.w === 'in' && made.length)) continue;
    }
    let minutes = item.duration.minutes;
    // "an hour and ten, less a quarter for tea"
    const less = sentenceItems.slice(at + 1).find((_x, q) => isBreak(sentenceItems, at + 1 + q));
    if (less)
      minutes -= less.duration
        ? less.duration.minutes
        : less.quantity!.value! < 1
          ? less.quantity!.value! * 60
          : less.quantity!.value!;
    if (isBreak(sentenceItems, at)) continue;
    const words = ` ${clause.items.map((x) => x.w).join(' ')} `;
    const near = ` ${clause.items
      .slice(k + 1, k + 7)
      .map((x) => x.w)
      .join(' ')} `;
    const taskAfter = /^ (of|on|at|doing|for|with|in|to|went|spent|went to|went on|was|just) /.test(near)
      ? taskIn(clause.items.slice(k + 1, k + 8))
      : undefined;
    const justFor = / (just |only )?for (the |that |just )?/.test(near) && taskAfter;
    const taskBefore = taskIn(clause.items.slice(0, k));
    const treatments = state.drafts.filter(
      (d) =>
        d.entry.kind === 'treatment' &&
        d.sentence === clause.sentence &&
        (d.entry.state === 'done' || d.entry.state === 'doing'),
    );
    const all = state.drafts.filter(
      (d) => d.entry.kind === 'treatment' && (d.entry.state === 'done' || d.entry.state === 'doing'),
    );
    const several =
      / (both|together|all told|altogether|all in|for the lot|in all|the lot|whole business|all of (it|that)|total|for it all|everything|between them|for the (two|three)) /.test(
        words,
      );
    if (justFor && treatments.length) {
      const t = treatments.find((d) => TASK_MATCH(d, clause.items.slice(k + 1, k + 8)));
      if (t) {
        setMinutes(t, minutes, item);
        continue;
      }
    }
    const bareTask = taskAfter ?? (taskBefore && !made.length && !treatments.length ? taskBefore : undefined);
    if (
      bareTask &&
      !(
        made.length === 1 &&
        bareTask.item.action &&
        made.some((d) => d.origins['action'] && d.origins['action'].from === bareTask.item.token.from)
      )
    ) {
      state.drafts.push(
        makeDraft(
          'work',
          v,
          { task: [bareTask.task, 'work.task', bareTask.item], minutes: [minutes, item.duration.rule, item] },
          'unneeded',
        ),
      );
      continue;
    }
    const pool = treatments.length ? treatments : all.filter((d) => d.sentence >= clause.sentence - 1);
    const distinct = pool.filter((d) => !(d.entry as { minutes?: number }).minutes);
    if (distinct.length === 1 && !(several && all.length > 1)) {
      setMinutes(distinct[0]!, minutes, item);
      continue;
    }
    if (distinct.length > 1) {
      const inClause = distinct.filter((d) => d.clause === clause_index(v));
      if (inClause.length === 1 && !several) {
        setMinutes(inClause[0]!, minutes, item);
        continue;
      }
      if (
        / (took|for that alone|that one|that took|just that|alone|for that|it took) /.test(words) &&
        !several
      ) {
        setMinutes(distinct.at(-1)!, minutes, item);
        continue;
      }
      const actions = unique(distinct.map((d) => (d.entry as { action?: Action }).action));
      if (actions.length === 1 && !several) {
        setMinutes(distinct.at(-1)!, minutes, item);
        continue;
      }
      if (!several && inClause.length === 0) {
        setMinutes(distinct.at(-1)!, minutes, item);
        continue;
      }
      const task = taskIn(clause.items)?.task ?? TASK_OF_ACTION[actions[0]!];
      state.drafts.push(
        makeDraft(
          'work',
          v,
          {
            task: [task, 'work.of-treatments', undefined, 'implied'],
            minutes: [minutes, item.duration.rule, item],
          },
          'unneeded',
        ),
      );
      continue;
    }
    const named = taskIn(clause.items);
    if (
      named ||
      / (worked|work|spent|put in|hours?|did|at it|on it|today|tonight|sewing|session|sat) /.test(words)
    ) {
      state.drafts.push(
        makeDraft(
          'work',
          v,
          {
            task: [named?.task ?? state.memory.running, 'work.task', named?.item, named ? 'said' : 'implied'],
            minutes: [minutes, item.duration.rule, item],
          },
          'unneeded',
        ),
      );
    }
  }
}
const clause_index = (v: { index: number }): number => v.index;

const TASK_MATCH = (d: Draft, items: Item[]): boolean => {
  const action = (d.entry as { action?: Action }).action;
  return items.some((x) => x.action?.v === action || (x.task && action && TASK_OF_ACTION[action] === x.task));
};

function setMinutes(draft: Draft, minutes: number, item: Item): void {
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
