import { WHOLE_LEAVES, WHOLE_MATTERS, WHOLE_SIZES } from '../../lexicon/whole-statements.ts';
import { PatternSet, plainWordsOf } from '../../text/pattern-set.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { tellsPlace } from '../tells-place.ts';
import { wordsBetween } from '../words-between.ts';
import { beginsStatement } from './begins-statement.ts';
import { PREPOSITIONS } from './is-predicate.ts';
import { BETWEEN_STATEMENTS, endOfSentence, isStop, pushStop } from './joints.ts';
import { REMOVE_VERBS } from './removal-at.ts';
import { leans } from './run-on.ts';

const WHOLE = [...WHOLE_MATTERS, ...WHOLE_SIZES, ...WHOLE_LEAVES];
const OF_WHOLE = new PatternSet(WHOLE);

/** Words without which nothing is told whole. */
const TELLS_WHOLE =
  /^(leaving|left|leave|stay|stays|staying|remain|measures?|measured|comes?|came|is|'s|are|every|decided|settled|chosen|picked|made|sure|certain|undecided|unsure|minds|decide|choose|settle|decision|open|up|agreed|fixed|tbd|going|gone|went|sticking|plumped|done by|done|finished|ready|back|by|be)$/;

/** How many items from `k` on tell something whole; 0 where nothing is told there. */
function lengthOfWhole(items: Item[], k: number, to: number): number {
  const words = items
    .slice(k, to)
    .map((x) => x.w)
    .join(' ');
  if (!OF_WHOLE.test(words, plainWordsOf(words))) return 0;
  let longest = 0;
  for (const pattern of WHOLE) longest = Math.max(longest, pattern.exec(words)?.[0].length ?? 0);
  let length = -1;
  for (let m = k; m < to; m++) {
    length += items[m]!.w.length + 1;
    if (length === longest)
      // "well, I'm leaving that be" leans on what was said before it
      return /leaving/.test(words.slice(0, 12)) && !items.slice(k, m).some((x) => tellsPlace(x) || x.fabric)
        ? 0
        : m - k + 1;
    if (length > longest) return 0;
  }
  return 0;
}

/** "take back the cream, backing's still open" is no work before the comma. */
const tellsWork = (x: Item): boolean =>
  x.w !== 'back' &&
  (Boolean(x.action || x.finding || x.fail || x.part || x.topic || x.material || x.measure || x.object) ||
    Boolean(x.duration || x.clock || x.span || x.place?.places.length || REMOVE_VERBS[x.w]?.form === 'past'));

const OPEN_IS = / (?:open|undecided|settled|decided) (?:is|are|'s) /;

const FILLS =
  /^(?:anyhow|anyway|though|now|too|again|first|last|at least|so far|already|today|tonight|done)$/;

/** Where something may be told whole: at the beginning, behind a joint, or behind a word that leans on nothing. */
function mayBegin(items: Item[], k: number, from: number): boolean {
  const before = items[k - 1];
  // "backing and batting settled"
  if (k > from && BETWEEN_STATEMENTS.test(before?.w ?? '') && items[k]!.topic && items[k - 2]?.topic)
    return false;
  // "still open is the binding but the backing is settled": the one word order for both
  if (OPEN_IS.test(wordsBetween(items, from, k))) return false;
  // "neither the binding nor the thread's settled" is one
  if (before?.w === 'nor' && items.slice(from, k).some((x) => x.w === 'neither')) return false;
  if (k === from || !before || BETWEEN_STATEMENTS.test(before.w)) return true;
  // "leaving the binding colour open for now"
  if (/^(?:leav|left$|keep|kept$)/.test(before.w)) return false;
  // "tied row 1 | tails are an inch", "the first four anyhow | tails are an inch"
  if (
    items[k]!.measure &&
    /^(?:is|'s|are)$/.test(items[k + 1]?.w ?? '') &&
    (before.place || (before.quantity && !before.quantity.unit) || FILLS.test(before.w))
  )
    return true;
  // "tie yarn color open", "the binding seams are open"
  if (items[k]!.topic || items[k]!.measure || items[k]!.part) return false;
  return !leans(items, k - 1) && !PREPOSITIONS.has(before.w);
}

/**
 * Puts a stop before and behind what is told whole ("row 6 torn | haven't decided on the binding color | I've replaced the
 * binding"), so that neither its doubt nor its choice is looked for in what stands beside it.
 */
export function withWholeStatements(items: Item[]): Item[] {
  if (!items.some((x) => TELLS_WHOLE.test(x.w))) return items;
  const out: Item[] = [];
  let from = 0;
  let to = endOfSentence(items, 0);
  let k = 0;
  while (k < items.length) {
    const item = items[k]!;
    if (isStop(item)) {
      out.push(item);
      from = ++k;
      to = endOfSentence(items, k);
      continue;
    }
    const told = items.slice(from, k);
    const length =
      mayBegin(items, k, from) && !told.some((x) => /^(:|--|if|whether)$/.test(x.w))
        ? lengthOfWhole(items, k, to)
        : 0;
    if (!length) {
      out.push(item);
      k++;
      continue;
    }
    if (told.some(tellsWork)) {
      pushStop(out, item);
    }
    out.push(...items.slice(k, k + length));
    k += length;
    let next = k;
    while (next < to && next < k + 3 && BETWEEN_STATEMENTS.test(items[next]!.w)) next++;
    // "the top border's three inches, the bottom one's four" leans on the size before it
    if (next < to && !/ ones? /.test(wordsBetween(items, next, next + 4)) && beginsStatement(items, next)) {
      out.push(boundaryBefore(items[next]!, ';'));
      from = k = next;
    }
  }
  return out;
}
