import { WHOLE_MATTERS } from '../../lexicon/whole-matters.ts';
import { PatternSet, plainWordsOf } from '../../text/pattern-set.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { beginsStatement } from './begins-statement.ts';
import { PREPOSITIONS } from './is-predicate.ts';
import { isStop } from './joints.ts';
import { REMOVE_VERBS } from './removal-at.ts';
import { LEANS } from './run-on.ts';

const OF_MATTERS = new PatternSet(WHOLE_MATTERS);
const JOINT = /^(,|and|&|\+|but|so|then|also|oh|--)$/;

/** Words without which no matter is told whole. */
const TELLS_MATTER =
  /^(decided|settled|chosen|picked|made|sure|certain|undecided|unsure|minds|decide|choose|settle|decision|open|up|agreed|fixed|tbd|going|gone|went|sticking|plumped|done by|done|finished|ready|back|by|be)$/;

/** How many items from `k` on tell a matter whole; 0 where none is told there. */
function lengthOfMatter(items: Item[], k: number, to: number): number {
  const words = items
    .slice(k, to)
    .map((x) => x.w)
    .join(' ');
  if (!OF_MATTERS.test(words, plainWordsOf(words))) return 0;
  let longest = 0;
  for (const pattern of WHOLE_MATTERS) longest = Math.max(longest, pattern.exec(words)?.[0].length ?? 0);
  let length = -1;
  for (let m = k; m < to; m++) {
    length += items[m]!.w.length + 1;
    if (length === longest) return m - k + 1;
    if (length > longest) return 0;
  }
  return 0;
}

/** "take back the cream, backing's still open" is no work before the comma. */
const tellsWork = (x: Item): boolean =>
  x.w !== 'back' &&
  (Boolean(x.action || x.finding || x.fail || x.part || x.topic || x.material || x.measure || x.object) ||
    Boolean(x.duration || x.clock || x.span || x.place?.places.length || REMOVE_VERBS[x.w]?.form === 'past'));

/** Where a matter may be told whole: at the beginning, behind a joint, or behind a word that leans on nothing. */
function mayBegin(items: Item[], k: number, from: number): boolean {
  const before = items[k - 1];
  if (k === from || !before || JOINT.test(before.w)) return true;
  // "tie yarn color open"
  if (items[k]!.topic) return false;
  return !LEANS.test(before.w) && !PREPOSITIONS.has(before.w);
}

/**
 * Puts a stop before and behind a matter that is told whole ("row 6 torn | haven't decided on the binding color | I've replaced the
 * binding"), so that neither its doubt nor its choice is looked for in what stands beside it.
 */
export function withWholeMatters(items: Item[]): Item[] {
  if (!items.some((x) => TELLS_MATTER.test(x.w))) return items;
  const out: Item[] = [];
  let from = 0;
  let k = 0;
  while (k < items.length) {
    const item = items[k]!;
    if (isStop(item)) {
      out.push(item);
      from = ++k;
      continue;
    }
    let to = k;
    while (to < items.length && !isStop(items[to]!)) to++;
    const told = items.slice(from, k);
    const length =
      mayBegin(items, k, from) && !told.some((x) => /^(:|--|if|whether|because|as|since)$/.test(x.w))
        ? lengthOfMatter(items, k, to)
        : 0;
    if (!length) {
      out.push(item);
      k++;
      continue;
    }
    if (told.some(tellsWork)) {
      while (JOINT.test(out.at(-1)?.w ?? '') && !isStop(out.at(-1)!)) out.pop();
      out.push(boundaryBefore(item, ';'));
    }
    out.push(...items.slice(k, k + length));
    k += length;
    let next = k;
    while (next < to && next < k + 3 && JOINT.test(items[next]!.w)) next++;
    if (next < to && beginsStatement(items, next)) {
      out.push(boundaryBefore(items[next]!, ';'));
      from = k = next;
    }
  }
  return out;
}
