import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import { type Draft, makeDraft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { findDays } from '../../rules/times/find-day.ts';
import { dayStart, wallMinutes, wallTime } from '../../rules/times/local-time.ts';
import { put, type Standing } from '../standing.ts';

/**
 * Mends of the time that the last note told, which name no new time: a break taken off afterwards, another day, the minutes
 * of a deed without their unit. Each gives whether it changed what stands.
 */

type Work = Extract<Standing['was'], { kind: 'work' }>;
const LEAD = '(?:(?:no|oh|and|but|so|well|sorry|wait|actually|i mean|i meant|forgot|,|-) )*';
const BREAK =
  /\b(?:break|lunch|tea|dinner|supper|coffee|cuppa|phone|telephone|nap|off|less|minus|not counting|in the middle|interrupted|away|nothing done)\b/;

/** "with half an hour off for lunch", "forgot the tea break, twenty minutes": taken off the stretch that stands. */
function breakOff(s: Standing, e: Work, items: Item[], words: string): boolean {
  const length = items.filter((x) => x.duration);
  // "make that twenty minutes for the news", of a stretch from which a break was taken off
  const rested = e.minutes !== undefined && / (?:make|call) (?:it|that) .* for (?:the|my|a) /.test(words);
  if (!e.start || !e.end || length.length !== 1 || items.length > 16 || !(BREAK.test(words) || rested))
    return false;
  if (
    items.some(
      (x) =>
        x.finding ||
        x.span ||
        x.clock ||
        x.action?.form === 'past' ||
        (x.place?.places.length && x.place.kind === 'blocks'),
    )
  )
    return false;
  const minutes = wallMinutes(e.end) - wallMinutes(e.start) - length[0]!.duration!.minutes;
  if (minutes <= 0) return false;
  put(s.draft, 'minutes', minutes, 'amend.break', length);
  return true;
}

const DAY_ONLY = new RegExp(
  `^ ${LEAD}(?:that was |it was |that 's |this was |those were |make (?:that|it) |on )?(?:\\S+ ){1,3}?(?:that was|it was|that|i mean|i meant|sorry|actually|by the way|btw|though|i should (?:say|add|have said)|i ought to (?:say|add)|i forgot to (?:say|add)|mind|mind you|come to think of it|in fact|not today|not yesterday|not this morning|,|\\.| )*$`,
);

/** "that was yesterday, not today": the same time on another day. */
function otherDay(state: ReaderState, s: Standing, e: Work, items: Item[], words: string): boolean {
  if (items.length > 9 || !DAY_ONLY.test(words)) return false;
  if (
    items.some(
      (x) => x.finding || x.action || x.duration || x.span || x.clock || x.quantity || x.task || x.material,
    )
  )
    return false;
  const day = findDays(words.replace(/,? not \w+(?: \w+)?/g, ''), state.local)[0];
  const old = e.start ?? e.time ?? e.end;
  if (!day || day.vague || !old) return false;
  const shift = day.start - dayStart(wallMinutes(old));
  if (!shift) return false;
  for (const slot of ['start', 'end', 'time'] as const) {
    const time = e[slot];
    if (time) put(s.draft, slot, wallTime(wallMinutes(time) + shift), 'amend.day', []);
  }
  return true;
}

const TASK_ONLY = new RegExp(
  `^ ${LEAD}(?:i should have said|i should say|should have said|i meant|i mean|that was|it was|call it) (?:the )?\\S+(?: \\S+)? $`,
);

const BARE_TASK = new RegExp(
  `^ ${LEAD}(?:(?:it|that|this) was |that 's |all |mostly |just )*(?:the )?\\S+(?: (?:that was|that is|by the way|mostly|all of it|[.!]))* $`,
);
/** "piecing that should say", "cutting it should be" */
const TASK_SHOULD = new RegExp(
  `^ ${LEAD}(?:the )?\\S+(?: \\S+)? (?:,|--)? ?(?:that|it|this)? ?(?:should|ought to) (?:say|read|be|have been|have said)(?: [.!])* $`,
);

const MINUTES_OF = { half: 30, quarter: 15, 'twenty five': 25, twenty: 20, ten: 10, five: 5 } as const;
const OTHER_MINUTE = new RegExp(
  `^ ${LEAD}(?:(?:it|that) was |more like |make (?:it|that) )?(?:a |at )?(${Object.keys(MINUTES_OF).join('|')}) (past|after|to)(?: (?:,|rather|actually|i should (?:say|have said)|i ought to say|i meant|if anything|more truly|i mean|sorry|then|really|more like|[.!]))* $`,
);

/** "started at two", then "quarter past, rather"; "finished at three", then "ten to": the minutes of the one clock told. */
function otherMinute(s: Standing, e: Work, words: string): boolean {
  const said = OTHER_MINUTE.exec(words);
  const told = (['start', 'end', 'time'] as const).filter((slot) => e[slot] !== undefined);
  const slot = told[0];
  if (!said || !slot || told.length > 1) return false;
  const minutes = MINUTES_OF[said[1] as keyof typeof MINUTES_OF];
  const at = wallMinutes(e[slot]!);
  // of the hours about the one said, that which lies nearest
  const ahead = ((((said[2] === 'to' ? 60 - minutes : minutes) - (at % 60)) % 60) + 60) % 60;
  put(s.draft, slot, wallTime(at + (ahead > 30 ? ahead - 60 : ahead)), 'amend.minute', []);
  return true;
}

/** "I should have said cleaning". */
function otherTask(s: Standing, e: Work, items: Item[], words: string): boolean {
  const task = items.find((x) => x.task)?.task;
  if (
    !task ||
    task === e.task ||
    // "quilting", of an hour that told no task
    !(
      TASK_ONLY.test(words) ||
      TASK_SHOULD.test(words) ||
      (e.task === undefined && items.length < 5 && BARE_TASK.test(words))
    ) ||
    items.some((x) => x.place?.places.length || x.duration || x.clock)
  )
    return false;
  put(
    s.draft,
    'task',
    task,
    'amend.task',
    items.filter((x) => x.task),
  );
  return true;
}

export function mendWork(state: ReaderState, standing: Standing[], items: Item[], words: string): boolean {
  const works = standing.filter(({ was }) => was.kind === 'work');
  const s = works[0];
  if (works.length !== 1 || s?.was.kind !== 'work') return false;
  return (
    breakOff(s, s.was, items, words) ||
    otherDay(state, s, s.was, items, words) ||
    otherMinute(s, s.was, words) ||
    otherTask(s, s.was, items, words)
  );
}

const TOOK = new RegExp(
  `^ ${LEAD}(?:it|that|that one|this one|the lot|they|both|them|which|the pair)? ?(?:only |just |all )*(took|was|were)(?: me| us)?(?: about| around| nearly| roughly| only| maybe| just| like| more like| closer to| nearer)* (\\S+(?: - \\S+| \\S+)?)(?: or so| altogether| all told| in all| total| odd| all in all)*(?: [.!])* $`,
);

/** "and it took twenty", "that one was 18": minutes, of the one deed that stands. */
export function tookMinutes(standing: Standing[], items: Item[], words: string): boolean {
  const said = TOOK.exec(words);
  const numbers = items.filter((x) => x.quantity?.value !== undefined && !x.quantity.unit);
  const value = numbers[0]?.quantity?.value;
  if (!said || numbers.length !== 1 || value === undefined || value < 3 || value > 300) return false;
  const deeds = standing.filter(
    ({ was }) => was.kind === 'treatment' && (was.state === 'done' || was.state === 'doing'),
  );
  const deed = deeds[0];
  if (deeds.length !== 1 || deed?.was.kind !== 'treatment') return false;
  if (said[1] !== 'took' && deed.was.minutes === undefined) return false;
  put(deed.draft, 'minutes', value, 'amend.took', numbers);
  return true;
}

/** Words that may stand beside a length told by itself: "all that took about an hour", "40 minutes for the two of them". */
const BESIDE_LENGTH =
  /^(?:no|oh|and|but|so|well|um|uh|er|,|-|it|that|all|of|the|lot|whole|they|both|two|three|pair|them|together|altogether|only|just|took|was|were|came|come|to|me|us|about|around|nearly|roughly|maybe|like|good|best|part|a|an|or|so|told|in|total|for|those|these|which|alone|by|itself|own|'s|work|or|than|longer|i|thought|took|say|there|\.|!|on)$/;

/**
 * "patched 3-2 and darned 3-4", then "that took an hour": one length of several deeds is time at work, of a single one its own.
 * "the darn took twenty minutes" is that deed's. Gives the whole set.
 */
export function tookLength(state: ReaderState, standing: Standing[], items: Item[]): Draft[] | undefined {
  const lengths = items.filter((x) => x.duration);
  const length = lengths[0];
  if (items.length > 14 || lengths.length !== 1 || standing.some(({ was }) => was.kind === 'work'))
    return undefined;
  const deeds = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      (was.state === 'done' || was.state === 'doing') &&
      was.minutes === undefined,
  );
  const rest = items.filter((x) => !x.duration && !BESIDE_LENGTH.test(x.w));
  const own = rest.length === 1 ? deeds.filter(({ was }) => isDeed(was, rest[0]!)) : deeds;
  if (
    rest.length > 1 ||
    (rest.length === 1 && (own.length !== 1 || items[items.indexOf(rest[0]!) - 1]?.w !== 'the'))
  )
    return undefined;
  const first = own[0]?.was;
  if (first?.kind !== 'treatment' || !first.action) return undefined;
  const { minutes, rule } = length!.duration!;
  const drafts = standing.map((s) => s.draft);
  if (own.length === 1) {
    put(own[0]!.draft, 'minutes', minutes, 'amend.took', [length!]);
    return drafts;
  }
  const task = TASK_OF_ACTION[first.action] ?? state.memory.running;
  return [
    ...drafts,
    makeDraft(
      'work',
      { index: -1, sentence: 0, items },
      { task: [task, 'work.of-treatments', undefined, 'implied'], minutes: [minutes, rule, length] },
      'unneeded',
    ),
  ];
}

/** Does the word name the deed: "the darn", "the net", "the patching"? */
const isDeed = (was: Standing['was'], x: Item): boolean =>
  was.kind === 'treatment' &&
  was.action !== undefined &&
  (x.action?.v === was.action ||
    (was.action === 'overlay' && x.material === 'net') ||
    (was.action === 'patch' && x.w === 'patch'));
