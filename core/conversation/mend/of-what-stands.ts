import type { Item } from '../../rules/item.ts';
import { blockAt, blocksOfLine, countUp, isWholeRow, rowOf, splitBlock } from '../../rules/places/grid.ts';
import { wholeLines } from '../../rules/places/line-spoken.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { countsOf } from '../../text/number-words.ts';
import { SECOND_LOOK } from '../cues.ts';
import { placesOf, put, type Standing } from '../standing.ts';

const COUNT: Record<string, number> = countsOf(1, 10);

const LEAD = String.raw`^ (?:(?:no|nope|oh|ah|well|sorry|wait|actually|i mean|i meant|that 's|that was|it 's|it was|not (?:quite )?(?:all of (?:it|them)|the whole (?:row|column|line|lot|thing)|the lot|everything)|,|-|;|\.) )*`;
const TAIL = String.raw`(?: (?:of (?:it|them|that|those|that row|the row|that column|the column)|anyway|actually|sorry|i mean|that is|really|that was|blocks?|ones|[.!]))* ?$`;

/** "only the first three of it", "not the whole row, just the last two", "well, the bottom half of it anyway": of one line, a part. */
const PART_OF_IT = new RegExp(
  `${LEAD}(?:(only|just) )?(?:it 's |it was )?(?:the )?(first|last|top|bottom|left|right|upper|lower)(?: hand)? (half|two|three|four|five|six|[2-9])${TAIL}`,
);

/** Narrows the one line that stands to the part of it that is told. */
export function partOfIt(state: ReaderState, standing: Standing[], words: string): boolean {
  const said = PART_OF_IT.exec(words);
  // "the first three": without a word that says so they may be what comes next
  if (!said || !(said[1] || / (?:of (?:it|them|that)|not (?:quite )?(?:all|the)) /.test(words))) return false;
  const lined = standing.filter(({ was }) => wholeLines(state.grid, placesOf(was))?.lines.length === 1);
  const placed = standing.filter(({ was }) => placesOf(was).length > 0);
  const [only] = lined;
  if (!only || placed.length !== lined.length) return false;
  const line = placesOf(only.was);
  if (lined.some(({ was }) => placesOf(was).join() !== line.join())) return false;
  const row = isWholeRow(state.grid, line);
  const end = said[2]!;
  if (row ? /^(top|bottom|upper|lower)$/.test(end) : /^(left|right)$/.test(end)) return false;
  const half = said[3] === 'half';
  if (half && line.length % 2) return false;
  const count = half ? line.length / 2 : (COUNT[said[3]!] ?? Number(said[3]));
  if (!(count < line.length)) return false;
  const part = /^(first|top|left|upper)$/.test(end) ? line.slice(0, count) : line.slice(-count);
  for (const s of lined) put(s.draft, 'places', part, 'amend.part-of-it', []);
  return true;
}

const ONWARD = new RegExp(
  `${LEAD}(?:all the way |right |up |along |down )*(?:to|thru|through|till|until|as far as) `,
);

/** "to 6-4", "up to 6-4 actually", after a run of blocks: it ends there. */
export function endsAt(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 7 || !ONWARD.test(words)) return false;
  const said = items.filter((x) => x.place?.places.length);
  const to = splitBlock(said[0]?.place?.places[0] ?? '');
  if (
    !to ||
    said.length !== 1 ||
    said[0]!.place!.places.length !== 1 ||
    said[0]!.place!.rule !== 'place.pair'
  )
    return false;
  if (items.some((x) => x.finding || x.action || x.quantity?.unit || x.duration)) return false;
  const runs = standing.filter(({ was }) => {
    const at = placesOf(was).map((p) => splitBlock(p));
    return at.length > 1 && at.every((b) => b?.row === to.row);
  });
  if (runs.length !== standing.filter(({ was }) => placesOf(was).length).length || !runs.length) return false;
  for (const s of runs) {
    const from = Math.min(...placesOf(s.was).map((p) => splitBlock(p)!.block));
    if (to.block <= from) return false;
    const run = countUp(from, to.block).map((k) => `${to.row}-${k}`);
    put(s.draft, 'places', run, 'amend.ends-at', said);
  }
  return true;
}

const LOOKED =
  /^ (?:(?:oh|no|well|so|right|ok|actually|,) )*(?:(?:i )?(?:'ve |have |had |having |took )?(?:just )?(?:another |a (?:closer|proper|better|second) )?look(?:ed|ing)?(?: again| at it again| closer| properly| closely| at it)*|on (?:a )?(?:closer|second|another) (?:look|inspection)|up close|in (?:better|daylight|this) light) /;

/** "looked again, it's mould", "on a closer look that's a hole": what was found is something else. */
export function foundOtherwise(
  state: ReaderState,
  standing: Standing[],
  items: Item[],
  words: string,
): boolean {
  if (items.length > 16 || !(LOOKED.test(words) || SECOND_LOOK.test(words.trim()))) return false;
  const [now] = state.drafts;
  const [was] = standing;
  if (state.drafts.length !== 1 || standing.length !== 1 || !now || was?.was.kind !== 'condition')
    return false;
  if (now.entry.kind !== 'condition' || now.entry.finding === was.was.finding) return false;
  if (/ (?:also|too|as well|another|and there) /.test(words)) return false;
  const here = placesOf(was.was);
  // another place has something of its own
  if (now.placed === 'said' && placesOf(now.entry).join() !== here.join()) return false;
  // "actually 2-3 isn't torn, that's a hole", of four blocks: that one alone
  if (items.some((x) => isOneOf(x, here))) return false;
  const said = items.filter((x) => x.finding);
  put(was.draft, 'finding', now.entry.finding, 'amend.finding', said);
  return true;
}

const isOneOf = (x: Item, here: string[]): boolean =>
  x.place?.kind === 'blocks' &&
  x.place.places.length < here.length &&
  x.place.places.every((p) => here.includes(p));

const REACHED = /\b(?:up to|as far as|reached|got to|done to|to block|along to)\b/i;

/** The first few blocks of a row. */
const beginsRow = (places: string[]): boolean =>
  places.every((p, k) => p === `${splitBlock(places[0]!)?.row}-${k + 1}`);

/** The number told by itself: "four I meant", "block four sorry", "no, three", "wait no that's three and four". */
const NUMBERS =
  /^ (?:(?:no|nope|oh|ah|sorry|wait|well|actually|i mean|i meant|make (?:that|it)|that 's|it 's|that was|it was|correction|should be|,|-|\.) )*(?:(row|rows|column|columns|col|block|blocks) )?(\w+)(?: (?:and|&|to) (\w+))?(?: (?:i (?:mean|meant|should have said)|sorry|not (\w+)|instead|rather|actually|that is|,|[.!]))* ?$/;

/**
 * "row two is stained", then "three I meant"; "columns one and two", then "no, two and three"; "quilted up to block three", then "four
 * sorry": lines told again by their numbers, or the block that was reached.
 */
export function numbersAgain(state: ReaderState, standing: Standing[], words: string): boolean {
  const said = NUMBERS.exec(words);
  if (!said || standing.some(({ was }) => was.kind === 'material')) return false;
  const numbers = [said[2], said[3]].filter((x) => x !== undefined).map((x) => COUNT[x] ?? Number(x));
  if (!numbers.length || numbers.some((n) => !Number.isInteger(n) || n < 1)) return false;
  const { grid } = state;
  const placed = standing.filter(({ was }) => placesOf(was).length > 0);
  if (
    !placed.length ||
    !/ (?:no|nope|sorry|wait|mean|meant|make|not|correction|actually|should) /.test(words)
  )
    return false;
  const noun = said[1] ?? '';
  const reached =
    REACHED.test(state.memory.last?.said ?? '') && placed.every(({ was }) => beginsRow(placesOf(was)));
  if (reached && numbers.length === 1 && /^(|blocks?)$/.test(noun)) {
    for (const s of placed) {
      const row = splitBlock(placesOf(s.was)[0]!)?.row;
      if (row === undefined || !blockAt(grid, row, numbers[0]!)) return false;
      put(s.draft, 'places', rowOf(grid, row).slice(0, numbers[0]), 'amend.reached', []);
    }
    return true;
  }
  const lines = placed.map(({ was }) => wholeLines(grid, placesOf(was)));
  const axis = lines[0]?.axis;
  if (!axis || lines.some((l) => l?.axis !== axis) || /^block/.test(noun)) return false;
  if ((/^row/.test(noun) && axis !== 'row') || (/^col/.test(noun) && axis !== 'column')) return false;
  // "not two": the one of several that is wrong
  const wrong = said[4] === undefined ? undefined : (COUNT[said[4]] ?? Number(said[4]));
  const told = lines[0]!.lines;
  if (lines.some((l) => l!.lines.join() !== told.join())) return false;
  // "no, one to four" stays with the runs that are read elsewhere
  const fresh = / to /.test(words)
    ? Array.from({ length: Math.max(0, numbers[1]! - numbers[0]! + 1) }, (_, k) => numbers[0]! + k)
    : numbers;
  const now =
    wrong !== undefined && told.length > 1 && fresh.length === 1
      ? told.map((n) => (n === wrong ? fresh[0]! : n))
      : fresh;
  const most = axis === 'row' ? grid.rows : grid.blocks;
  if (!now.length || now.some((n) => n > most) || now.join() === told.join()) return false;
  // "four, sorry", of two rows: which of them is not said
  if (told.length > 1 && fresh.length === 1 && wrong === undefined) return false;
  const places = now.flatMap((n) => blocksOfLine(grid, axis, n));
  for (const s of placed) put(s.draft, 'places', places, 'amend.lines', []);
  return true;
}
