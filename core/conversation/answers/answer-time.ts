import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { splitBlock } from '../../rules/places/grid.ts';
import { latestClock, wallMinutes, wallTime } from '../../rules/times/local-time.ts';
import { COUNT_WORDS } from '../../text/number-words.ts';
import { placesOf, put } from '../standing.ts';
import { type Answering, takeOver } from './answering.ts';

/** "seven to nine", asked when it was: two hours of the clock. */
function bareSpan(a: Answering): { start: Hour; end: Hour } | undefined {
  const said =
    /^ (?:(?:um|uh|er|oh|about|say|it was|from|on|that|this|last|(?:sun|mon|tues|wednes|thurs|fri|satur)day|yesterday|today|morning|afternoon|evening|night|,) )*([a-z]+|\d{1,2}(?:[.:][0-5]\d)?) (?:to|till|til|until|-) ([a-z]+|\d{1,2}(?:[.:][0-5]\d)?)(?: (?:or so|ish|about|i think|i 'd say|i reckon|(?:on )?(?:yesterday|\w+day|that day)(?: morning| afternoon| evening)?))*(?: [.!])* $/.exec(
      a.words,
    );
  const minutesOf = (w: string): number => {
    const [hour, minutes] = w.split(/[.:]/) as [string, string?];
    return (HOURS.indexOf(hour) % 13) * 60 + Number(minutes ?? 0);
  };
  const [start, end] = said ? [minutesOf(said[1]!), minutesOf(said[2]!)] : [];
  return start === undefined || end === undefined || start < 60 || end < 60
    ? undefined
    : { start: { minute: start, fixed: false }, end: { minute: end, fixed: false } };
}

/** "oh, say eight to twenty to ten", "call it nine to half ten": two hours with "to" between, whatever was said before. */
function spanOfItems({ items }: Answering): { start: Hour; end: Hour } | undefined {
  const hour = (x: Item | undefined): Hour | undefined => {
    const value = x?.quantity?.unit ? undefined : x?.quantity?.value;
    return (
      x?.clock ??
      (value !== undefined && Number.isInteger(value) && value > 0 && value < 13
        ? { minute: value * 60, fixed: false }
        : undefined)
    );
  };
  const at = items.flatMap((x, k) => (hour(x) ? [k] : []));
  const [k] = at;
  if (k === undefined || at.length !== 2 || at[1] !== k + 2) return undefined;
  if (!/^(?:to|till|til|until|-)$/.test(items[k + 1]!.w) || !(items[k]!.clock || items[k + 2]!.clock))
    return undefined;
  return { start: hour(items[k])!, end: hour(items[k + 2])! };
}

type Hour = { minute: number; fixed: boolean };

const HOURS = [...'0 1 2 3 4 5 6 7 8 9 10 11 12'.split(' '), ...COUNT_WORDS.slice(0, 13)];

/** "forty-five", asked how long: minutes. */
function bareMinutes(a: Answering): Item | undefined {
  const numbers = a.items.filter((x) => x.quantity?.value !== undefined && !x.quantity.unit);
  const n = numbers[0]?.quantity?.value ?? 0;
  return numbers.length === 1 && n > 12 && n <= 600 && a.items.length <= 7 ? numbers[0] : undefined;
}

/** When or how long it was: a span, a length of time or an hour of the clock. */
export function answerTime(a: Answering): boolean {
  const open = a.standing.find(
    ({ draft: { entry: e } }) => e.kind === 'work' && !e.mark && !e.start && !e.minutes,
  );
  const target = open ?? a.standing.find(({ draft }) => draft.entry.kind === 'work');
  if (target?.draft.entry.kind !== 'work') return false;
  const blocks = a.state.drafts.some(
    (d) =>
      (d.entry.kind === 'treatment' || d.entry.kind === 'condition') &&
      d.placed === 'said' &&
      placesOf(d.entry).some((p) => splitBlock(p)),
  );
  if (blocks && a.cue !== 'strong') return false;
  if (a.cue !== 'strong' && ofAnotherTime(a)) return false;
  const work = a.state.drafts.find((d) => d.entry.kind === 'work');
  // "ten to five", asked when she stopped: an hour of the clock
  const marked = target.draft.entry.mark !== undefined && !target.draft.entry.time;
  const hours = marked ? undefined : (bareSpan(a) ?? spanOfItems(a));
  if (!hours && work?.entry.kind === 'work' && (work.entry.start || work.entry.mark || work.entry.minutes)) {
    const { task } = work.entry;
    if (task && target.draft.entry.task && task !== target.draft.entry.task && saidHere(a, work, 'task'))
      return false;
    for (const slot of ['start', 'end', 'minutes', 'time', 'mark'] as const)
      if (work.entry[slot] !== undefined) {
        (target.draft.entry as Record<string, unknown>)[slot] = work.entry[slot];
        const origin = work.origins[slot] ?? work.origins['entry'];
        if (origin) target.draft.origins[slot] = origin;
      }
    a.taken.add(work);
    for (const x of a.items) if (x.duration || x.span || x.clock || x.quantity) a.used.add(x);
    takeOver(
      a,
      a.items.filter((x) => a.used.has(x)),
    );
    return true;
  }
  const duration = a.items.find((x) => x.duration);
  // "saturday, ten till twelve": two hours, and not ten to
  const spanItem = a.items.find((x) => x.span);
  const span = spanItem?.span ?? hours;
  const clock = a.items.find((x) => x.clock);
  const now = wallMinutes(a.state.local);
  const minutes = span || duration || clock ? undefined : bareMinutes(a);
  if (span) {
    const end = latestClock(span.end, now, a.day);
    const start = latestClock(span.start, end - 1, a.day);
    const from = spanItem ? [spanItem] : a.items.filter((x) => x.quantity || x.place || x.clock);
    put(target.draft, 'start', wallTime(start), 'answer.time', from);
    put(target.draft, 'end', wallTime(end), 'answer.time', from);
    for (const x of from) a.used.add(x);
  } else if (minutes) {
    put(target.draft, 'minutes', minutes.quantity!.value, 'answer.time', [minutes]);
    a.used.add(minutes);
  } else if (duration) {
    put(target.draft, 'minutes', duration.duration!.minutes, 'answer.time', [duration]);
    a.used.add(duration);
  } else {
    const number = clock
      ? undefined
      : a.items.find((x) => x.quantity?.value !== undefined && !x.quantity.unit);
    const value = number?.quantity?.value;
    if (
      !clock &&
      (value === undefined ||
        value > 12 ||
        (marked ? a.items.length > 3 : !/ (at|about|around|since|from|till|until|by) /.test(a.words)))
    )
      return false;
    const item = clock ?? number!;
    put(
      target.draft,
      'mark',
      target.draft.entry.mark ??
        (/ (stop|stopped|finish|finished|quit|end|ended|till|until) /.test(a.words) ? 'stop' : 'start'),
      'answer.time',
      [item],
    );
    put(
      target.draft,
      'time',
      wallTime(latestClock(clock?.clock ?? { minute: value! * 60, fixed: false }, now)),
      'answer.time',
      [item],
    );
    a.used.add(item);
  }
  takeOver(a, [...a.used]);
  return true;
}

const PARTS_OF_DAY: [RegExp, string][] = [
  [/ (?:before breakfast|before work|this morning|first thing|at dawn) /, 'morning'],
  [/ (?:this afternoon|after lunch|before tea|this arvo) /, 'afternoon'],
  [/ (?:tonight|this evening|after supper|after dinner|after tea) /, 'evening'],
  [/ last night /, 'last night'],
  [/ yesterday /, 'yesterday'],
];

const partOfDay = (words: string): string | undefined => PARTS_OF_DAY.find(([p]) => p.test(words))?.[1];

/**
 * "mended from seven till quarter past nine tonight", where it was asked how long she mended before breakfast; "sewing the binding
 * down now, started 7:15", where last night's was asked: work of its own, and no answer.
 */
function ofAnotherTime(a: Answering): boolean {
  const asked = partOfDay(
    ` ${a.state.memory.last?.said.toLowerCase().replace(/[.,;!?]/g, ' ') ?? ''} `.replace(/ +/g, ' '),
  );
  if (!asked) return false;
  if (
    a.state.drafts.some((d) => d.entry.kind === 'treatment' && d.entry.state === 'doing') &&
    / now /.test(a.words)
  )
    return true;
  const told = partOfDay(a.words.replace(/ [.,;!?] /g, ' '));
  return told !== undefined && told !== asked;
}

/** Is the slot said in this note, and not taken from what ran? */
const saidHere = (a: Answering, d: Draft, slot: string): boolean => {
  const o = d.origins[slot];
  return o?.how === 'said' && a.items.some((x) => x.task && x.token.from >= o.from && x.token.from < o.to);
};
