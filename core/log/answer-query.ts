import type { Place } from '../../shared/entry.ts';
import type { Reading } from '../../shared/note.ts';
import type { Task } from '../../shared/vocabulary.ts';
import { currencyDigits } from '../estimate/currency-digits.ts';
import { type Hours, hoursFromLog, type TaskTally } from '../hours/hours.ts';
import { datePhrase, durationPhrase, moneyPhrase } from '../record/wording/figure-phrases.ts';
import { listPhrase } from '../record/wording/list-phrase.ts';
import { inPlaces, placesPhrase } from '../record/wording/places-phrase.ts';
import { sentence } from '../record/wording/sentence.ts';
import { tradeTerms } from '../record/wording/trade-terms.ts';
import { answerYardage } from './answer-yardage.ts';
import { neededMaterials, openMatters, plannedWork } from './open-matters.ts';
import { sayAmount, sayEntry } from './say-entry.ts';
import type { LoggedEntry, QuiltState } from './state.ts';

/** An answer to be spoken, and what it stands on: one line a note, as said. */
export type Answer = { text: string; working: string[] };

/** As many items as a person takes in by ear; the rest is counted. */
const MOST_SPOKEN = 5;
const MOST_WORKING = 60;

/**
 * Answers a question put to the log. `at` is the moment it was asked, ISO 8601 with the offset of the
 * quilt's place. Pure; what the question leaves out is filled in the widest way (the day asked, all
 * places), and a question about nothing known gets an answer that says so.
 */
export function answerQuery(
  state: QuiltState,
  reading: Reading,
  at: string,
  given: { idleMin: number },
): Answer {
  const asked = reading.arguments ?? {};
  const hours = (): Hours => hoursFromLog(state, { idleMin: given.idleMin, now: at });
  switch (reading.query) {
    case 'hours-total':
      return answerTotal(state, hours());
    case 'hours-task':
      return asked.task === undefined ? answerTotal(state, hours()) : answerTask(state, hours(), asked.task);
    case 'hours-day':
      return answerDayHours(state, hours(), asked.date ?? at.slice(0, 10), at);
    case 'open-matters':
      return answerOpenMatters(state);
    case 'to-do':
      return answerToDo(state);
    case 'place-history':
      return answerPlaces(state, asked.places ?? []);
    case 'materials-needed':
      return answerNeeded(state);
    case 'yardage':
      return answerYardage(state, asked.about);
    case 'cost':
      return answerCost(state);
    case 'last-entry':
      return answerLast(state);
    case 'day-review':
      return answerDay(state, hours(), asked.date ?? at.slice(0, 10), at);
    case undefined:
      return { text: reading.reply, working: [] };
  }
}

function answerTotal(state: QuiltState, hours: Hours): Answer {
  if (hours.totalMin === 0) return { text: 'No time is logged yet.', working: [] };
  const days = hours.byDay.length;
  const spread = days === 1 ? '' : ` over ${days} days`;
  const most = hours.byTask[0]!;
  const share =
    hours.byTask.length < 2
      ? ''
      : ` Most of it ${most.task === undefined ? 'under no task' : `was ${taskName(state, most.task)}`}, ${durationPhrase(most.minutes)}.`;
  return {
    text: `${durationPhrase(hours.totalMin)} so far${spread}.${share}${saysInferred(hours.inferredMin)}${asksProblem(hours)}`,
    working: [
      ...hours.byTask.map((tally) => `${taskOrNone(state, tally)}: ${durationPhrase(tally.minutes)}`),
      ...hours.byDay.map((day) => `${dateOf(state, day.date)}: ${durationPhrase(day.minutes)}`),
    ],
  };
}

function answerTask(state: QuiltState, hours: Hours, task: Task): Answer {
  const tally = hours.byTask.find((one) => one.task === task);
  const name = taskName(state, task);
  if (!tally) return { text: `No time is logged for ${name} yet.`, working: [] };
  const days = hours.byDay.filter((day) => day.byTask.some((one) => one.task === task)).length;
  return {
    text: `${durationPhrase(tally.minutes)} on ${name} so far${days > 1 ? `, over ${days} days` : ''}.${saysInferred(tally.inferredMin)}`,
    working: [...spanLines(state, hours, tally.spanIds), ...noteLines(state, tally.noteIds)],
  };
}

function answerDayHours(state: QuiltState, hours: Hours, date: string, at: string): Answer {
  const day = hours.byDay.find((one) => one.date === date);
  const when = dayName(state, date, at);
  if (!day) return { text: sentence(`No time is logged ${when}`), working: [] };
  const tasks = listPhrase(
    day.byTask.map((tally) => `${durationPhrase(tally.minutes)} ${taskOrNone(state, tally)}`),
    state.quilt.spelling,
  );
  const text =
    day.byTask.length > 1 ? `${durationPhrase(day.minutes)} ${when}: ${tasks}` : `${tasks} ${when}`;
  return {
    text: `${sentence(text)}${saysInferred(day.inferredMin)}`,
    working: [...spanLines(state, hours, day.spanIds), ...noteLines(state, day.noteIds)],
  };
}

function answerOpenMatters(state: QuiltState): Answer {
  const terms = tradeTerms(state.quilt.spelling);
  const { choices, matters } = openMatters(state);
  const items = [
    ...choices.map(({ places, ways }) => {
      const where = places.length === 0 ? '' : ` ${inPlaces(places, state.quilt, 3)}`;
      return `${listPhrase(
        ways.map((way) => terms.plan(way)),
        state.quilt.spelling,
        'or',
      )}${where}`;
    }),
    ...matters.map(({ about }) => terms.question(about)),
  ];
  const entries = [...choices, ...matters].flatMap((open) => open.entries);
  if (items.length === 0) return { text: 'Nothing is undecided.', working: [] };
  return {
    text: `${countOf(items.length, 'matter')} still open: ${spokenList(items)}`,
    working: entryLines(state, entries),
  };
}

function answerToDo(state: QuiltState): Answer {
  const terms = tradeTerms(state.quilt.spelling);
  const planned = plannedWork(state);
  if (planned.length === 0) return { text: 'Nothing is planned that is not done.', working: [] };
  const items = planned.map(({ action, places, entry }) => {
    const treatment = entry.entry.kind === 'treatment' ? entry.entry : undefined;
    const object = treatment?.object && action === 'remove' ? ` ${terms.object(treatment.object, true)}` : '';
    const where = places.length === 0 ? '' : ` ${inPlaces(places, state.quilt, 3)}`;
    return `${action === undefined ? 'work' : terms.plan(action)}${object}${where}`;
  });
  return {
    text: `${countOf(items.length, 'thing')} to do: ${spokenList(items)}`,
    working: entryLines(
      state,
      planned.map((one) => one.entry),
    ),
  };
}

function answerPlaces(state: QuiltState, places: readonly Place[]): Answer {
  const wanted = new Set<string>(places);
  const entries = state.entries.filter(
    ({ entry }) => 'places' in entry && entry.places?.some((place) => wanted.has(place)),
  );
  const where = places.length === 0 ? 'that place' : placesPhrase(places, state.quilt);
  if (entries.length === 0) return { text: sentence(`Nothing is logged of ${where} yet`), working: [] };
  const items = entries.map(({ entry }) =>
    sayEntry(places.length === 1 ? withoutPlaces(entry) : entry, state.quilt),
  );
  // The last is what counts most: where there is more than an ear takes in, the early ones are counted.
  const spoken = items.slice(-MOST_SPOKEN);
  const before = items.length - spoken.length;
  return {
    text: `${sentence(where)} ${before > 0 ? `After ${before} earlier: ` : ''}${spoken.map(sentence).join(' ')}`,
    working: entryLines(state, entries),
  };
}

function answerNeeded(state: QuiltState): Answer {
  const needed = neededMaterials(state);
  if (needed.length === 0) return { text: 'Nothing is on the list to buy.', working: [] };
  const terms = tradeTerms(state.quilt.spelling);
  const items = needed.map(({ words }) => {
    const name = words.name ?? (words.material === undefined ? 'something' : terms.material(words.material));
    const amount = sayAmount(words, state.quilt);
    return amount === '' ? name : `${amount} of ${name}`;
  });
  return {
    text: `To buy: ${spokenList(items)}`,
    working: entryLines(
      state,
      needed.map((one) => one.entry),
    ),
  };
}

function answerCost(state: QuiltState): Answer {
  const { currency, spelling } = state.quilt;
  const digits = currencyDigits(currency) ?? 2;
  const paid: LoggedEntry[] = [];
  let minor = 0;
  for (const logged of state.entries) {
    const { entry } = logged;
    // What is needed is not paid yet; what is used was paid for when it was bought.
    if (entry.kind !== 'material' || entry.use !== 'bought' || !entry.cost) continue;
    const count = entry.cost.each ? (entry.quantity ?? 1) : 1;
    minor += Math.round(entry.cost.amount * count * 10 ** digits);
    paid.push(logged);
  }
  if (paid.length === 0) return { text: 'No cost is logged yet.', working: [] };
  return {
    text: `${moneyPhrase(minor, digits, currency, spelling)} for materials so far, in ${countOf(paid.length, 'purchase')}.`,
    working: entryLines(state, paid),
  };
}

function answerLast(state: QuiltState): Answer {
  const last = state.notes.findLast(
    ({ entryIds, replacedBy }) => entryIds.length > 0 && replacedBy === undefined,
  );
  if (!last) return { text: 'Nothing is logged yet.', working: [] };
  const entries = entriesOf(state, last.entryIds);
  return {
    text: `At ${last.note.at.slice(11, 16)}: ${entries.map(({ entry }) => sentence(sayEntry(entry, state.quilt))).join(' ')}`,
    working: noteLines(state, [last.note.id]),
  };
}

function answerDay(state: QuiltState, hours: Hours, date: string, at: string): Answer {
  const entries = state.entries.filter((entry) => entry.at.slice(0, 10) === date);
  const day = hours.byDay.find((one) => one.date === date);
  const when = dayName(state, date, at);
  if (entries.length === 0 && !day) return { text: sentence(`Nothing is logged ${when}`), working: [] };
  const groups: [string, (entry: LoggedEntry['entry']) => boolean][] = [
    ['Found', (entry) => entry.kind === 'condition'],
    ['Done', (entry) => entry.kind === 'treatment' && (entry.state === 'done' || entry.state === 'doing')],
    ['Planned', (entry) => entry.kind === 'treatment' && entry.state === 'planned'],
    ['Left open', (entry) => isOpen(entry)],
    ['Bought', (entry) => entry.kind === 'material' && entry.use === 'bought'],
  ];
  const parts = groups.flatMap(([title, belongs]) => {
    const items = entries
      .filter(({ entry }) => belongs(entry))
      .map(({ entry }) => sayEntry(entry, state.quilt, true));
    return items.length === 0 ? [] : [`${title}: ${spokenList(items)}`];
  });
  const time = day ? `${durationPhrase(day.minutes)} ${when}.` : sentence(`No time is logged ${when}`);
  return { text: [sentence(time), ...parts].join(' '), working: entryLines(state, entries) };
}

const isOpen = (entry: LoggedEntry['entry']): boolean =>
  (entry.kind === 'treatment' && entry.state === 'considering') ||
  (entry.kind === 'decision' && entry.status === 'open');

const withoutPlaces = (entry: LoggedEntry['entry']): LoggedEntry['entry'] =>
  'places' in entry ? { ...entry, places: undefined } : entry;

const taskName = (state: QuiltState, task: Task): string => tradeTerms(state.quilt.spelling).task(task);
const taskOrNone = (state: QuiltState, tally: TaskTally): string =>
  tally.task === undefined ? 'under no task' : taskName(state, tally.task);
const dateOf = (state: QuiltState, date: string): string => datePhrase(date, state.quilt.spelling, true);

/** "today" and "yesterday" for the days next to the asking, else the date with its weekday. */
function dayName(state: QuiltState, date: string, at: string): string {
  const days = (Date.parse(`${at.slice(0, 10)}T12:00:00Z`) - Date.parse(`${date}T12:00:00Z`)) / 86_400_000;
  if (days === 0) return 'today';
  if (days === 1) return 'yesterday';
  return `on ${dateOf(state, date)}`;
}

const countOf = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

function spokenList(items: readonly string[]): string {
  const more = items.length - MOST_SPOKEN;
  const spoken = items.slice(0, more === 1 ? items.length : MOST_SPOKEN);
  return `${spoken.join('; ')}${more > 1 ? `; and ${more} more` : ''}.`;
}

const saysInferred = (minutes: number): string =>
  minutes === 0 ? '' : ` ${durationPhrase(minutes)} of that is inferred from the times of your notes.`;

function asksProblem(hours: Hours): string {
  const left = hours.problems.find((problem) => problem.kind === 'left-running');
  return left ? ` ${left.message}` : '';
}

function spanLines(state: QuiltState, hours: Hours, spanIds: readonly string[]): string[] {
  const wanted = new Set(spanIds);
  return hours.spans
    .filter((span) => wanted.has(span.id))
    .map(
      (span) =>
        `${span.start.replace('T', ' ')} to ${span.end.slice(11)}: ${durationPhrase(span.minutes)} ${span.task === undefined ? 'under no task' : taskName(state, span.task)} (${HOW[span.how]})`,
    );
}

const HOW = {
  hand: 'set by hand',
  said: 'as said',
  length: 'length as said, place on the clock assumed',
  inferred: 'inferred from the notes',
} as const;

function entriesOf(state: QuiltState, ids: readonly string[]): LoggedEntry[] {
  const wanted = new Set(ids);
  return state.entries.filter((entry) => wanted.has(entry.id));
}

function entryLines(state: QuiltState, entries: readonly LoggedEntry[]): string[] {
  return noteLines(state, [...new Set(entries.flatMap((entry) => entry.noteId ?? []))]);
}

/** The notes behind a figure, as they were said. */
function noteLines(state: QuiltState, noteIds: readonly string[]): string[] {
  const wanted = new Set(noteIds);
  return state.notes
    .filter(({ note }) => wanted.has(note.id))
    .slice(-MOST_WORKING)
    .map(({ note }) => `${note.at.slice(0, 16).replace('T', ' ')} “${note.text}”`);
}
