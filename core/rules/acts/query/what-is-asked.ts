import { READ_OUT, QUESTION_SIGNS as SIGN } from '../../../lexicon/questions.ts';
import type { Item } from '../../item.ts';
import { placesOfClause } from '../../places/places-of-clause.ts';
import { type DayFound, dateOf } from '../../times/find-day.ts';
import { wallMinutes, wallTime } from '../../times/local-time.ts';
import { wordsBetween } from '../../words-between.ts';
import type { QueryFound } from '../find-query.ts';
import { taskOf, taskOfDeed, yardageTopic } from './asked-after.ts';
import { shortDay } from './short-day.ts';

/** Which question to the log it is, with what stands beside it; `t` is the question proper, `whole` all that was said. */
export function whatIsAsked(
  t: string,
  whole: string,
  items: Item[],
  day: DayFound | undefined,
  local: string,
): QueryFound | undefined {
  const today = wallTime(wallMinutes(local)).slice(0, 10);
  const date = day && !day.vague ? dateOf(day) : shortDay(whole, local);
  const spoken = date
    ? items.filter(
        (x) => !inDay(x, day) && !(day === undefined && /^(?:the )?\w*(?:first|second|third|th)$/.test(x.w)),
      )
    : items;
  const placed = placesOfClause(
    spoken.filter(
      (x, k) =>
        !(x.w === 'back' && /^(read|me|it|that|this|play|everything|all|set)$/.test(spoken[k - 1]?.w ?? '')),
    ),
  );
  const explicit =
    placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt')
      ? placed.places
      : undefined;
  const namedTask = taskOf(items);

  if (SIGN.lastEntry.test(t) && !SIGN.notLast.test(t))
    return { query: 'last-entry', rule: 'query.last-entry' };
  if (SIGN.cost.test(t) && !SIGN.notCost.test(t)) return { query: 'cost', rule: 'query.cost' };
  if (SIGN.yardage.test(t) && !SIGN.notYardage.test(t))
    return { query: 'yardage', about: yardageTopic(items), rule: 'query.yardage' };
  // "did I log the stain?"
  if (/^ ?did (?:i|we) (?:ever |already |not )?(?:log|put|note|write|mention|record|enter)\b/.test(t))
    return { query: 'place-history', ...(explicit ? { places: explicit } : {}), rule: 'query.did-i-log' };
  if (SIGN.heard.test(t) && !explicit && !date && !namedTask)
    return { query: 'last-entry', rule: 'query.heard' };
  const total = /\btotal\b/.test(t) && !SIGN.materials.test(t);
  if ((SIGN.hours.test(t) || total) && !SIGN.notHours.test(t)) {
    const task =
      namedTask ?? (/\b(?:take|taken|took)(?: me| us)? to /.test(t) ? taskOfDeed(items) : undefined);
    if (task) return { query: 'hours-task', task, ...(date ? { date } : {}), rule: 'query.hours-task' };
    if (date) return { query: 'hours-day', date, rule: 'query.hours-day' };
    return { query: 'hours-total', rule: 'query.hours' };
  }
  // "how much of that was the quilting", "what's the mending come to"
  if (namedTask && SIGN.ofTask.test(t))
    return { query: 'hours-task', task: namedTask, ...(date ? { date } : {}), rule: 'query.of-task' };
  // "what did we settle for 2-5" asks for that block's story
  if (
    explicit?.some((p) => /^\d/.test(p)) &&
    /\b(?:did|have|had) (?:i|we) (?:decide|settle|choose|decided|settled|chosen)\b/.test(t)
  )
    return { query: 'place-history', places: explicit, rule: 'query.place' };
  if (SIGN.open.test(t) && !SIGN.notOpen.test(t)) return { query: 'open-matters', rule: 'query.open' };
  // "the bottom left block" leaves nothing to do
  const sideless = t.replace(LEFT_SIDE, ' ');
  const left = SIGN.toDo.test(sideless);
  const buys = SIGN.materials.test(t);
  if (buys && !SIGN.notMaterials.test(t)) return { query: 'materials-needed', rule: 'query.materials' };
  // "what's left to do on row three" asks for the plan, "what's been done to row three" for the story
  if (
    explicit &&
    SIGN.history.test(t) &&
    !(
      left &&
      /\b(?:left|to do|to be done|next|remaining|still|unfinished|planned|need(?:s|ed)? \w+ing)\b/.test(
        sideless,
      )
    )
  )
    return { query: 'place-history', places: explicit, rule: 'query.place' };
  if (
    left &&
    !/\bnext door\b/.test(t) &&
    !(date && !/\b(?:left|to do|to be done|still|planned?|on for)\b/.test(t))
  )
    return { query: 'to-do', ...(explicit ? { places: explicit } : {}), rule: 'query.to-do' };
  if (explicit) return { query: 'place-history', places: explicit, rule: 'query.place-plain' };
  // "what did I do to the green twill ones"
  if (
    !date &&
    SIGN.history.test(t) &&
    items.some((x, k) => x.fabric && OF_CLOTH.test(wordsBetween(items, k - 3, k)))
  )
    return { query: 'place-history', rule: 'query.place-of-cloth' };
  if (date || SIGN.day.test(t)) return { query: 'day-review', date: date ?? today, rule: 'query.day' };
  // a block that only its cloth names, or that the ear has missed
  if (SIGN.history.test(t) && (items.some((x) => x.fabric) || /\bbeen done (?:to|on|with|about)\b/.test(t)))
    return { query: 'place-history', rule: 'query.place-of-cloth' };
  // "which blocks are stained", "where was that moth damage"
  if (
    /^ (?:which|where|how many) (?:of (?:the|those) )?(?:blocks?|ones?|squares?|pieces?|rows?|'s|is|was|were|are|did) /.test(
      t,
    ) &&
    items.some((x) => x.finding || x.action?.form === 'past')
  )
    return { query: 'place-history', rule: 'query.where-found' };
  if (READ_OUT.test(t.trim()) && /\b(?:everything|all|log|notes|entries|back|through|over|up)\b/.test(t))
    return { query: 'day-review', date: today, rule: 'query.day' };
  return undefined;
}

const OF_CLOTH = / (?:to|with|about|on|for) (?:the|those|that|both|all)(?: the)? $/;
const LEFT_SIDE =
  / (?:(?:top|bottom|upper|lower|middle|centre|center|far|very|below|above|corner down|corner up) left(?: hand)?|left (?:below|above)|left(?: hand)? (?:hand|side|edge|border|corner|column|block|one|row)|(?:on|from|to|down|at) the left|left to right|left of) /g;

/** Words that only name the day ("the fifth") are no place. */
const inDay = (x: Item, day: DayFound | undefined): boolean =>
  day !== undefined && x.token.from >= day.index && x.token.from < day.index + day.length;
