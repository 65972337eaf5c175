import type { Task } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { taskInShort } from '../task-in-short.ts';
import type { TimesTold } from './times-told.ts';

const DAY =
  /^(?:today|yesterday|tonight|mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat|sun|(?:mon|tues|wednes|thurs|fri|satur|sun)day|morning|afternoon|evening|night|this|last)$/;
const LIGHT =
  /^(?:on|the|of|at|for|another|about|a|and|then|-|=|i|did|doing|more|before|after|all|lunch|tea|,)$/;

/** The kind of work that a bare word in a list of lengths names. */
const taskOfWord = (x: Item): Task | undefined => x.task ?? taskInShort(x);

/**
 * "mend 50m, piece 20m, admin 10m", "2h mending Tue, 1h30 Wed": nothing but lengths, each with its kind of work, or with a day of its own
 * and the kind of work told before. Tells whether the sentence was such a list.
 */
export function takeListedLengths({ items, used, push }: TimesTold): boolean {
  if (items.filter((x) => x.duration).length < 2 || items.some((_x, k) => used.has(k))) return false;
  const pieces: Item[][] = [[]];
  for (const x of items)
    if (/^(?:[,:;&+]|and|then|plus|--)$/.test(x.w)) pieces.push([]);
    else pieces.at(-1)!.push(x);
  const told = pieces.filter((p) => p.length);
  let ran: Task | undefined;
  const out: { task: Task | undefined; length: Item; word: Item | undefined }[] = [];
  for (const piece of told) {
    const lengths = piece.filter((x) => x.duration);
    const words = piece.filter((x) => !x.duration && !DAY.test(x.w) && !LIGHT.test(x.w));
    const task = words.length === 1 ? taskOfWord(words[0]!) : undefined;
    if (words.length > 1 || (words.length && !task) || lengths.length > 1) return false;
    if (!lengths.length) {
      // "45 min before lunch and an hour after, all mending"
      if (piece === told.at(-1) && task && out.length && out.every((x) => !x.task)) {
        for (const x of out) x.task = task;
        continue;
      }
      // "mending: 2h Tue, 1h Wed"
      if (piece !== told[0] || !task || out.length) return false;
      ran = task;
      continue;
    }
    const apart = piece.some((x) => DAY.test(x.w) || /^(?:another|before|after)$/.test(x.w));
    const own = task ?? (apart ? ran : undefined);
    if (!own && !apart) return false;
    ran = own;
    out.push({ task: own, length: lengths[0]!, word: words[0] });
  }
  if (out.length < 2 || out.some((x) => !x.task)) return false;
  for (const { task, length, word } of out) {
    const at = items.indexOf(length);
    push(
      word ? { task: task!, at: items.indexOf(word), item: word } : { task: task! },
      { minutes: length.duration!.minutes },
      'work.length',
      [length],
      at,
      at + 1,
    );
  }
  items.forEach((_x, k) => {
    used.add(k);
  });
  return true;
}
