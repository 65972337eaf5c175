import { HARD } from '../../clause/joints.ts';
import type { Item } from '../../item.ts';
import type { DayFound } from '../../times/find-day.ts';
import { wordsBetween } from '../../words-between.ts';
import type { QueryFound } from '../find-query.ts';
import { taskOf } from './asked-after.ts';
import { questionIn } from './question-in.ts';
import { whatIsAsked } from './what-is-asked.ts';

const LONGEST_TALK = 12;
/** Work that has begun or is over is told, and more than talk. */
const TELLS_WORK =
  /^(?:done|finished|stopped|started|start|stop|begun|began|quit|finish|over|complete|bought|need|left|still|n't|not)$/;

/** "The quilting was slow, I know. How long was it in all?": talk of a task, and then a question of how long "it" took. */
export function askedLast(items: Item[], day: DayFound | undefined, local: string): QueryFound | undefined {
  const end = HARD.has(items.at(-1)?.w ?? '') ? items.length - 1 : items.length;
  const stop = items.slice(0, end).findLastIndex((x) => HARD.has(x.w));
  const talk = items.slice(0, stop);
  const question = items.slice(stop + 1, end);
  if (stop < 2 || stop > LONGEST_TALK || talk.some(tellsMore)) return undefined;
  const task = taskOf(talk);
  const words = wordsBetween(question).trim();
  if (!task || taskOf(question) || !/^(?:(?:so|and|but) )?how (?:long|many hours|much time)\b/.test(words))
    return undefined;
  const body = questionIn(words, question, true);
  const found = body === undefined ? undefined : whatIsAsked(` ${body} `, ` ${words} `, question, day, local);
  return found?.query === 'hours-total'
    ? { query: 'hours-task', task, rule: 'query.hours-of-talk' }
    : undefined;
}

const tellsMore = (x: Item): boolean =>
  TELLS_WORK.test(x.w) ||
  Boolean(
    x.finding ||
      x.fail ||
      x.quantity ||
      x.cost ||
      x.duration ||
      x.clock ||
      x.span ||
      x.stitch ||
      x.fabric ||
      (x.material && !x.part && !x.task) ||
      (x.place && x.place.kind !== 'part' && x.place.places.length > 0) ||
      (x.action?.form === 'past' && !x.task),
  );
