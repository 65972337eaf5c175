import type { Estimated, WorkAction, WorkAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { decimal, exact } from './exact.ts';
import { forecastFinish } from './finish-forecast.ts';
import { type Batch, type Kind, learnPace, type Timed } from './pace-model.ts';
import { PACE_SHEET, UNKNOWN_PACE } from './pace-sheet.ts';
import type { Working } from './working.ts';

type Work = NonNullable<EstimateSpec['work']>;
type LogEntry = NonNullable<Work['log']>[number];

export const WORK_METHOD =
  'Minutes for one of an action are log-normal. The median starts from the pace sheet (a starting guess) and is drawn toward the log by exact conjugate (Gaussian) updating of the logs, partly pooled: one pace of the maker shared by all actions, one for each action, one for each kind of damage, and one rate of learning. The size of chance is weighed over a grid by how well it foretold the log; older entries count less. Low, likely and high are the 10th, 50th and 90th percentile; a total is matched by its exact mean and variance, so its range is narrower than the sum of the ranges.';

/** Extra variance of the log of a time that was shared out over the actions it covered. */
const SHARED_EXTRA = 0.35 ** 2;

const round = ({ low, likely, high }: Estimated): Estimated => ({
  low: decimal(low, 1),
  likely: decimal(likely, 1),
  high: decimal(high, 1),
});
const hoursFrom = ({ low, likely, high }: Estimated): Estimated => ({
  low: decimal(low / 60, 2),
  likely: decimal(likely / 60, 2),
  high: decimal(high / 60, 2),
});
const keyOf = (item: { action: string; damage?: string | undefined }): string =>
  `${item.action}\n${item.damage ?? ''}`;
const isShared = (entry: LogEntry): entry is Extract<LogEntry, { items: unknown }> => 'items' in entry;

interface Item {
  action: string;
  damage?: string | undefined;
  count?: number | undefined;
  length?: number | undefined;
}

/** The same work with its lengths told as counts of the pace sheet's unit. */
const byCount = (work: Work, working: Working): Work => {
  const told = new Set<string>();
  const counted = <T extends Item>(item: T): T => {
    const { length, ...rest } = item;
    if (length === undefined || item.count !== undefined) return rest as T;
    const pace = PACE_SHEET[item.action] ?? UNKNOWN_PACE;
    if (pace.lengthIn === undefined) {
      working.ask(`How many ${item.action}? It is not reckoned by length; one until then.`);
      return rest as T;
    }
    const one = working.fromInches(pace.lengthIn);
    if (!told.has(item.action))
      working.line(`${item.action} by length: ${working.show(one)} count as one ${pace.unit}`);
    told.add(item.action);
    return { ...rest, count: exact(length).div(one).valueOf() } as T;
  };
  return {
    ...work,
    ...(work.planned ? { planned: work.planned.map(counted) } : {}),
    ...(work.log
      ? {
          log: work.log.map((entry) =>
            isShared(entry) ? { ...entry, items: entry.items.map(counted) } : counted(entry),
          ),
        }
      : {}),
  };
};

/** Minutes for the planned work, from the starting pace sheet drawn toward the maker's own log. */
export const estimateWork = (asTold: Work, working: Working): WorkAnswer => {
  const work = byCount(asTold, working);
  const log = work.log ?? [];
  const kinds: Kind[] = [];
  const indexOf = new Map<string, number>();
  const kindOf = (item: { action: string; damage?: string | undefined }): number => {
    const key = keyOf(item);
    const found = indexOf.get(key);
    if (found !== undefined) return found;
    const pace = PACE_SHEET[item.action] ?? UNKNOWN_PACE;
    indexOf.set(key, kinds.length);
    kinds.push({ action: item.action, damage: item.damage, logGuess: Math.log(pace.minutes) });
    return kinds.length - 1;
  };
  if (work.planned === undefined) working.ask('What is planned: which treatments, and how many of each?');
  const planned = new Map<number, number>();
  for (const item of work.planned ?? []) {
    const kind = kindOf(item);
    planned.set(kind, (planned.get(kind) ?? 0) + (item.count ?? 1));
  }
  for (const entry of log) for (const item of isShared(entry) ? entry.items : [entry]) kindOf(item);

  const timed: Timed[] = [];
  const done = new Map<number, number>();
  const lots = new Map<number, number[]>();
  const loggedTimes = new Map<number, number>();
  let spentMin = 0;
  let untimed = 0;
  const count = (item: {
    action: string;
    damage?: string | undefined;
    count?: number | undefined;
  }): { kind: number; count: number; before: number } => {
    const kind = kindOf(item);
    const many = item.count ?? 1;
    const before = done.get(kind) ?? 0;
    done.set(kind, before + many);
    lots.set(kind, [...(lots.get(kind) ?? []), many]);
    return { kind, count: many, before };
  };
  const shared: { minutes: number; items: { kind: number; count: number; before: number }[]; ago: number }[] =
    [];
  log.forEach((entry, i) => {
    const ago = log.length - 1 - i;
    if (isShared(entry)) {
      spentMin += entry.minutes;
      shared.push({ minutes: entry.minutes, items: entry.items.map(count), ago });
      return;
    }
    const item = count(entry);
    if (entry.minutes === undefined) {
      untimed += 1;
      return;
    }
    spentMin += entry.minutes;
    loggedTimes.set(item.kind, (loggedTimes.get(item.kind) ?? 0) + 1);
    timed.push({ ...item, minutes: entry.minutes, ago, extra: 0 });
  });
  let model = learnPace(kinds, timed);
  for (const { minutes, items, ago } of shared) {
    const expected = items.map(({ kind, count: many }) => model.median(kind) * many);
    const whole = expected.reduce((sum, each) => sum + each, 0);
    items.forEach(({ kind, count: many, before }, i) => {
      timed.push({
        kind,
        count: many,
        before,
        minutes: (minutes * expected[i]!) / whole,
        ago,
        extra: SHARED_EXTRA,
      });
      loggedTimes.set(kind, (loggedTimes.get(kind) ?? 0) + 1);
    });
    working.line(
      `${decimal(minutes, 1)} min shared out by expected time over ${items.map(({ kind }, i) => `${kinds[kind]!.action} ${decimal((minutes * expected[i]!) / whole, 1)}`).join(', ')}`,
    );
  }
  if (shared.length > 0) model = learnPace(kinds, timed);

  const sittingOf = (kind: number): number => {
    const sizes = lots.get(kind);
    return sizes
      ? sizes.reduce((sum, size) => sum + size, 0) / sizes.length
      : Math.max(1, (planned.get(kind) ?? 1) / 4);
  };
  const batch = (kind: number, many: number, before: number): Batch => ({
    count: many,
    before,
    sitting: sittingOf(kind),
  });
  const alone = (kind: number, many: number, before: number): Estimated =>
    round(model.foretell(kinds.map((_, i) => batch(i, i === kind ? many : 0, before))));
  const doneOf = doneByPlan(kinds, planned, done);
  const actions: WorkAction[] = [...planned].map(([kind, many]) => {
    const { action, damage } = kinds[kind]!;
    const pace = PACE_SHEET[action] ?? UNKNOWN_PACE;
    const finished = doneOf.get(kind) ?? 0;
    const left = Math.max(0, many - finished);
    const each = alone(kind, 1, done.get(kind) ?? 0);
    const whole = alone(kind, many, 0);
    working.assume(`pace.${action}`, `${pace.minutes} min a ${pace.unit}`, `starting sheet: ${pace.source}`);
    const times = loggedTimes.get(kind) ?? 0;
    working.line(
      `${action}${damage ? ` (${damage})` : ''}: one takes ${each.low} / ${each.likely} / ${each.high} min, starting from ${pace.minutes}, ${times} logged ${times === 1 ? 'time' : 'times'}; planned ${many}: ${whole.low} / ${whole.likely} / ${whole.high} min; done ${decimal(finished)}, left ${decimal(many)} - ${decimal(finished)} = ${decimal(left)}`,
    );
    return {
      action,
      ...(damage === undefined ? {} : { damage }),
      planned: many,
      done: decimal(finished),
      left: decimal(left),
      ...whole,
      each,
      remaining: alone(kind, left, done.get(kind) ?? 0),
      unit: pace.unit,
      logged: times,
      startingGuess: pace.minutes,
    };
  });
  const total = round(model.foretell(kinds.map((_, kind) => batch(kind, planned.get(kind) ?? 0, 0))));
  const left = round(
    model.foretell(
      kinds.map((_, kind) =>
        batch(kind, Math.max(0, (planned.get(kind) ?? 0) - (doneOf.get(kind) ?? 0)), done.get(kind) ?? 0),
      ),
    ),
  );
  const paces = kinds.flatMap(({ action, damage }, kind) => {
    if (planned.has(kind) || !loggedTimes.has(kind)) return [];
    const each = alone(kind, 1, done.get(kind) ?? 0);
    working.line(
      `${action}${damage ? ` (${damage})` : ''}, not planned: one takes ${each.low} / ${each.likely} / ${each.high} min by the log`,
    );
    return [{ action, ...(damage === undefined ? {} : { damage }), each }];
  });
  if (untimed > 0) working.line(`${untimed} logged without a time: counted as done, no word on the pace`);
  working.line(
    `All that is planned: ${total.low} / ${total.likely} / ${total.high} min (low / likely / high), not the sum of the ranges`,
  );
  working.line(
    `Left, planned less done: ${left.low} / ${left.likely} / ${left.high} min; ${decimal(spentMin, 1)} min logged so far`,
  );
  working.line(`Method: ${WORK_METHOD}`);
  const finish = finishOf(work, left, working);
  return {
    method: WORK_METHOD,
    actions,
    ...(paces.length > 0 ? { paces } : {}),
    total,
    left,
    hours: hoursFrom(total),
    hoursLeft: hoursFrom(left),
    spentMin: decimal(spentMin, 1),
    ...(finish ? { finish } : {}),
    ...working.carried(),
  };
};

/**
 * What is done counts against its own kind of damage first; what is over counts against the same action
 * planned otherwise.
 */
const doneByPlan = (
  kinds: readonly Kind[],
  planned: ReadonlyMap<number, number>,
  done: ReadonlyMap<number, number>,
): Map<number, number> => {
  const result = new Map<number, number>();
  const over = new Map<string, number>();
  for (const [kind, many] of done) {
    const own = Math.min(many, planned.get(kind) ?? 0);
    if (own > 0) result.set(kind, own);
    const { action } = kinds[kind]!;
    over.set(action, (over.get(action) ?? 0) + many - own);
  }
  for (const [kind, wanted] of planned) {
    const { action } = kinds[kind]!;
    const have = result.get(kind) ?? 0;
    const taken = Math.min(over.get(action) ?? 0, wanted - have);
    if (taken > 0) {
      result.set(kind, have + taken);
      over.set(action, over.get(action)! - taken);
    }
  }
  return result;
};

const finishOf = (work: Work, left: Estimated, working: Working): WorkAnswer['finish'] => {
  if (work.weeklyHours === undefined) return undefined;
  if (work.today === undefined) {
    working.ask('From which day is the finishing date to be counted?');
    return undefined;
  }
  if (!work.weeklyHours.some((hours) => hours > 0)) {
    working.ask('How many hours a week are there for it?');
    return undefined;
  }
  const finish = forecastFinish(left, work.weeklyHours, work.today);
  working.line(
    `Finishing: ${decimal(left.likely / 60, 2)} h left at ${decimal(finish.weekly, 2)} h a week, from ${work.today}: ${finish.early} / ${finish.likely} / ${finish.late}`,
  );
  const { early, likely, late } = finish;
  return { early, likely, late };
};
