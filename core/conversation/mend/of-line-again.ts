import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { columnOf, rowOf, splitBlock } from '../../rules/places/grid.ts';
import { countsOf } from '../../text/number-words.ts';
import { placesOf, put, type Standing } from '../standing.ts';

const NUMBERS = countsOf(1, 12);
const COUNT = `(?:\\d{1,2}|${Object.keys(NUMBERS).join('|')})`;
const HEAD =
  "(?:(?:no|nope|oh|ah|um|uh|er|sorry|wait|actually|well|i mean|i meant|make (?:it|that)|that (?:'s|was|should be|should have been)|it (?:'s|was|should be)|should be|should have been|correction|[,.:-]|the|just|only|rather|to be) )*";
const TAIL = `(?: (?:blocks?|squares?|ones|of (?:them|those|it|that row)|there|in (?:it|that row|there)|along|anyway|anyhow|sorry|i mean|i meant|instead|actually|rather|then|my mistake|not (?:the )?(?:(?:first|last) )?${COUNT}|[,.!-]))*`;
/** "make it the first five", "no, the last four", "first three, sorry". */
const ENDED = new RegExp(`^${HEAD}(first|last) (${COUNT})${TAIL}$`);
/** "make that five": at the same end of the line. */
const COUNTED = new RegExp(`^(?:(?:no|oh|sorry|wait|actually|,) )*make (?:it|that) (${COUNT})${TAIL}$`);

/**
 * "(same in the row below, the first four.) Make it the first five": of the one thing that the last note told of the first or last few
 * blocks of a line, how many they were. Gives the last note's entries.
 */
export function ofLineAgain(
  standing: Standing[],
  items: Item[],
  words: string,
  grid: QuiltGrid,
): Draft[] | undefined {
  const ended = ENDED.exec(words.trim());
  const counted = ended ? null : COUNTED.exec(words.trim());
  if (!ended && !counted) return undefined;
  const count = numberIn((ended?.[2] ?? counted?.[1])!);
  const pool = standing.filter(
    ({ was }) => (was.kind === 'treatment' || was.kind === 'condition') && placesOf(was).length,
  );
  const [s] = pool;
  if (!s || pool.length > 1) return undefined;
  // "make it five" may be the minutes, or how many were bought
  if (counted && standing.some(({ was }) => hasFigure(was))) return undefined;
  const told = lineOf(placesOf(s.was), grid);
  if (!told || count < 1 || count > told.line.length) return undefined;
  const end = ended?.[1] ?? told.end;
  // "last two" alone, after the first two, is the next of them
  if (end !== told.end && /^(?:the )?(?:first|last) \S+$/.test(words.trim())) return undefined;
  const places = end === 'first' ? told.line.slice(0, count) : told.line.slice(-count);
  if (places.join() === placesOf(s.was).join()) return undefined;
  put(s.draft, 'places', places, 'amend.of-line', items);
  return standing.map((x) => x.draft);
}

const numberIn = (word: string): number => NUMBERS[word] ?? Number(word);

const hasFigure = (e: Standing['was']): boolean =>
  ['minutes', 'quantity', 'value', 'cost'].some((slot) => slot in e);

/** The row or column of which these are the first or the last few, but not all. */
function lineOf(places: string[], grid: QuiltGrid): { line: string[]; end: 'first' | 'last' } | undefined {
  const at = splitBlock(places[0] ?? '');
  if (!at || places.length < 2) return undefined;
  for (const line of [rowOf(grid, at.row), columnOf(grid, at.block)]) {
    if (places.length >= line.length) continue;
    if (line.slice(0, places.length).join() === places.join()) return { line, end: 'first' };
    if (line.slice(-places.length).join() === places.join()) return { line, end: 'last' };
  }
  return undefined;
}
