import type { QuiltGrid } from '../../../shared/quilt.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { LEXICON } from '../lexicon-index.ts';
import { blockAt, countUp, gridOfRow, splitBlock, thatAre } from './grid.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCKS, COLUMNS, heardTwo, ROWS, readSmallWord, SMALL, UNIT_AFTER } from './place-tokens.ts';

/** Row and block written or said as two numbers: "3-2", "3.2", "three two", "3 2", "3/2" between blocks. */
export function readPair(
  tokens: Token[],
  i: number,
  grid: QuiltGrid,
): { place?: string; next: number; outside: boolean; loose: boolean } | undefined {
  const a = tokens[i];
  if (!a) return undefined;
  // "a second one too"
  if (a.w === 'one' && /^(?:second|third|fourth|another)$/.test(w(tokens, i - 1))) return undefined;
  // "3.1" as a recogniser writes it
  if (a.kind === 'number' && /^\d{1,2}\.\d{1,2}$/.test(a.w)) {
    const [row, block] = a.w.split('.').map(Number);
    const after = w(tokens, i + 1);
    // "hexagon side 3.5"
    if (LENGTH_BEFORE.test(w(tokens, i - 1)) || /^(long|wide|high|across|apart)$/.test(after))
      return undefined;
    if (UNIT_AFTER.has(after) || after === '"' || after === "'" || after === '-' || after === '/')
      return undefined;
    const place = blockAt(grid, row!, block!);
    return place ? { place, next: i + 1, outside: false, loose: true } : undefined;
  }
  const first =
    a.kind === 'number'
      ? /^\d{1,3}$/.test(a.w)
        ? { value: a.value!, next: i + 1 }
        : undefined
      : readSmallWord(tokens, i);
  if (!first) return undefined;
  let j = first.next;
  const dash = tokens[j];
  let glued = false;
  if (dash?.w === '-' && (dash.glued || a.kind === 'word') && (tokens[j + 1]?.glued || a.kind === 'word')) {
    glued = dash.glued;
    j++;
  } else if (
    dash?.w === 'dash' ||
    (dash?.w === 'x' && dash.glued && tokens[j + 1]?.glued && !isMeasured(tokens, j + 2))
  ) {
    glued = true;
    j++;
  } else if (isSlashed(tokens, i)) {
    glued = true;
    j++;
  } else if (dash?.w === ',' && dash.glued && tokens[j + 1]?.glued && tokens[j + 1]?.kind === 'number') {
    j++;
  }
  const b = tokens[j];
  if (!b) return undefined;
  const second =
    b.kind === 'number'
      ? /^\d{1,3}$/.test(b.w)
        ? { value: b.value!, next: j + 1 }
        : undefined
      : (readSmallWord(tokens, j) ?? (glued ? undefined : heardTwo(tokens, j)));
  if (!second) return undefined;
  if (a.kind !== b.kind && !glued && j === first.next) return undefined;
  const after = w(tokens, second.next);
  const leadsOn = after === 'in' && (glued || IN_WHAT.test(w(tokens, second.next + 1)));
  if (UNIT_AFTER.has(after) && !leadsOn && after !== 'of') return undefined;
  if (
    after === '/' &&
    tokens[second.next]?.glued &&
    tokens[second.next + 1]?.kind === 'number' &&
    !/^[-/]$/.test(w(tokens, second.next + 2))
  )
    return undefined;
  const place = blockAt(grid, first.value, second.value);
  return place
    ? { place, next: second.next, outside: false, loose: !glued }
    : { next: second.next, outside: true, loose: !glued };
}

/** "six one in the orange", "two two in blanket stitch": the word after "in", where it is no inch. */
const IN_WHAT =
  /^(the|that|this|my|her|its|an?|some|same|blanket|running|whip|whipstitch|ladder|slip|backstitch|back|herringbone|satin|zigzag)$/;

/** Before a decimal these tell a length. */
const LENGTH_BEFORE =
  /^(sides?|size|width|wide|length|strips?|allowances?|tails?|ends|overhang|spacing|hex|hexagons?|hexies?|diamonds?)$/;

/** Before a block told by a slash: nothing, a mark, a word that joins or leads to a place, or what was done there. */
const BEFORE_SLASHED =
  /^(|[.,;:\n+&(-]|--|and|in|on|at|of|to|thru|from|both|seam|seams|between|betw|hole|tear|also|then|now|same|or|plus|got|that's|block|up|out|about|against|line|net|pin|press|iron|dust|hoover|back|vacuum|clean|wash|mend|photograph|support|replace|stabilize|stabilise|overlay)$/;
/** "3/4 of calico", "3/8 off the edge", "1/2 hr": amounts. */
const AFTER_AMOUNT =
  /^(of|off|from|too|wide|long|apart|"|'|yard|yardage|width|seam|seams|strips?|allowance|full|left|dozen|way|spool|reel|past|price|wool|cotton|poly|silk)$/;

/** "3/4: hole", "2/2+2/3 seam gone", "darned 4/1": row and block with a slash, where no part of one is told. */
function isSlashed(tokens: Token[], i: number): boolean {
  const slash = tokens[i + 1];
  const block = tokens[i + 2];
  if (slash?.w !== '/' || !slash.glued || block?.kind !== 'number' || !block.glued) return false;
  if (!/^\d{1,2}$/.test(tokens[i]!.w) || !/^\d{1,2}$/.test(block.w)) return false;
  const before = w(tokens, i - 1);
  // "4/2 hole 4/3 stain 4/4 fine"
  // "3/1 3/2 3/3 all thin"
  const listed = tokens[i - 2]?.w === '/' && tokens[i - 1]!.kind === 'number' && isSlashed(tokens, i - 3);
  if (
    !listed &&
    !BEFORE_SLASHED.test(before) &&
    !/(ed|sewn|ing|bound|darn|patch|tie|quilt|sew|stitch|baste)$/.test(before) &&
    !LEXICON.longestAt([tokens[i - 1]!], 0)?.payloads.some((s) => s.k === 'finding')
  )
    return false;
  if (
    /^(trimmed|trimming|measured|measuring|needed|needing|used|using|squared|cutting|being|during|overlapping)$/.test(
      before,
    )
  )
    return false;
  const after = w(tokens, i + 3);
  // a day: "on 3/4/26"
  return (
    !UNIT_AFTER.has(after) &&
    !AFTER_AMOUNT.test(after) &&
    !(
      after === '/' &&
      tokens[i + 3]!.glued &&
      tokens[i + 4]?.kind === 'number' &&
      !/^\d+$/.test(w(tokens, i + 6))
    )
  );
}

/** "5x3 in" and "60x72" are lengths. */
const isMeasured = (tokens: Token[], next: number): boolean =>
  UNIT_AFTER.has(w(tokens, next)) ||
  /^["']$/.test(w(tokens, next)) ||
  tokens.some((t) => /^(measured|measures?|wide|long|size|cut|strips?)$/.test(t.w));

const HEARD_FIRST = new Map(Object.entries({ for: 4, fore: 4, too: 2, to: 2, won: 1, tree: 3, free: 3 }));

const HEARD_SECOND = new Map(
  Object.entries({ for: 4, fore: 4, too: 2, to: 2, won: 1, tree: 3, free: 3, ate: 8, sex: 6 }),
);

/** Do the two words before `i` name a block as it was heard: "for one", "to for"? */
const endsInHeard = (tokens: Token[], i: number): boolean =>
  (HEARD_FIRST.has(w(tokens, i - 2)) || Object.hasOwn(SMALL, w(tokens, i - 2))) &&
  (HEARD_SECOND.has(w(tokens, i - 1)) || Object.hasOwn(SMALL, w(tokens, i - 1)));

/**
 * "hole in for three", "and for two", "in too for", "six won": numbers heard as other words, only where a block is awaited
 * and the word could not mean itself.
 */
function heardPair(
  tokens: Token[],
  i: number,
  grid: QuiltGrid,
): { place?: string; next: number; outside: boolean; loose: boolean } | undefined {
  const heard = HEARD_FIRST.get(w(tokens, i));
  const first = heard ?? readSmallWord(tokens, i)?.value;
  if (first === undefined) return undefined;
  const second = readSmallWord(tokens, i + 1)?.value ?? HEARD_SECOND.get(w(tokens, i + 1));
  if (second === undefined) return undefined;
  const after = w(tokens, i + 2);
  const before = w(tokens, i - 1);
  const counted = readCount(tokens, i + 2);
  // "embroidered in for for eighteen eighty six": a year is no third number
  if (UNIT_AFTER.has(after) || after === '-' || (counted && !(counted.value >= 17 && counted.value <= 20)))
    return undefined;
  if (/^(pieces|halves|strips|parts|bits|squares|lengths)$/.test(after)) return undefined;
  if (heard !== undefined) {
    const joined =
      /^(and|&|,)$/.test(before) &&
      (tokens.slice(Math.max(0, i - 4), i).some((t) => /^[2-9]$/.test(t.w) || Object.hasOwn(SMALL, t.w)) ||
        endsInHeard(tokens, i - 1));
    // "darned for for", "the seam at for one for two"
    const listed =
      (HEARD_SECOND.has(w(tokens, i + 1)) && /(ed|sewn)$/.test(before)) ||
      (endsInHeard(tokens, i) && tokens.some((t) => /^(seams?|seem|seems)$/.test(t.w)));
    const awaited = /^(in|on|at|of|from|under|behind|over|between)$/.test(before) || joined || listed;
    const begins = before === '' && /^(is|'s|has|had|needs|got|wants)$/.test(after);
    if (!awaited && !begins) return undefined;
    if (/^(the|them|those|a|of|more|other|rows|blocks|columns)$/.test(after)) return undefined;
    // "cut in to two pieces"
    if (
      w(tokens, i) === 'to' &&
      !/^(|,|\.|;|is|'s|has|and|by|with|from|needs|wants|was|it|at|took|where|so|but|i)$/.test(after)
    )
      return undefined;
  } else if (!isHeardSecond(tokens, i) || /^(the|a|by)$/.test(after)) return undefined;
  const place = blockAt(grid, first, second);
  // "four ate has a tear in it", of rows of seven
  if (!place && w(tokens, i + 1) === 'ate') return { next: i + 2, outside: true, loose: true };
  return place ? { place, next: i + 2, outside: false, loose: true } : undefined;
}

/** "three won"; "in two one and two for but …", "sound in two for": the second number, which can hardly be the word that it was heard as. */
function isHeardSecond(tokens: Token[], i: number): boolean {
  const second = w(tokens, i + 1);
  if (/^(won|tree|ate)$/.test(second)) return true;
  if (!/^(for|too|free|sex|fore)$/.test(second)) return false;
  const before = w(tokens, i - 1);
  const another = /^(and|&|,)$/.test(before) && endsInHeard(tokens, i - 1);
  // "one for i don't know, net or patch": of a block that nothing stands before
  const asked =
    before === '' && /^(i|we)$/.test(w(tokens, i + 2)) && /^(do|don't|'m|am)$/.test(w(tokens, i + 3));
  return (
    asked ||
    ((another || /^(in|at|on|of|and)$/.test(before)) &&
      /^(|[.,;:!?\n]|but|and|is|'s|has|had|so|needs|wants|got|looks|i|it|that|which|where)$/.test(
        w(tokens, i + 2),
      ) &&
      (another || before !== 'and'))
  );
}

/** What a block is told to be or to have, behind its two numbers. */
const TOLD_OF_BLOCK =
  /^(is|'s|has|had|somebody|someone|there|got|needs|wants|looks|it|that|i|with|was|could|must|should|went|gone|came)$/;
/** Before a block that a statement opens with. */
const OPENS = /^(|[.,;:!?\n]|--|and|but|then|now|so|er|um|uh|well|oh|right|okay|also|though|plus|&)$/;

/**
 * "4 6 somebody fixed it", "… and seven one is fraying": two small numbers at the head of a statement, before words that tell
 * of a block, though the quilt has no such block.
 */
const namesBlockAlone = (tokens: Token[], i: number, next: number): boolean => {
  const numbers = tokens.slice(i, next);
  return (
    next === i + 2 &&
    OPENS.test(w(tokens, i - 1)) &&
    TOLD_OF_BLOCK.test(w(tokens, next)) &&
    numbers.every((t) => (t.value ?? readSmallWord([t], 0)?.value ?? (t.w === 'ate' ? 8 : 99)) <= 15)
  );
};

/** "four down and two across", "2 across 3 down", "three rows down, third along": a block told by its two counts. */
export function downAndAcross(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const first = countedWay(tokens, i);
  if (!first) return undefined;
  let j = first.next;
  while (/^(,|and|then|&)$/.test(w(tokens, j)) && j < first.next + 2) j++;
  const second = countedWay(tokens, j);
  if (!second || second.axis === first.axis) return undefined;
  // "two down and one across from 3-2" is counted from there
  if (w(tokens, second.next) === 'from' || w(tokens, i - 1) === 'from') return undefined;
  const [down, across] = first.axis === 'row' ? [first, second] : [second, first];
  const row = down.back ? ctx.grid.rows + 1 - down.value : down.value;
  const block = across.back ? gridOfRow(ctx.grid, row).blocks + 1 - across.value : across.value;
  const place = blockAt(ctx.grid, row, block);
  return {
    next: second.next,
    places: place ? [place] : [],
    how: 'said',
    rule: 'place.down-and-across',
    kind: 'blocks',
    ...(place ? {} : { outside: true }),
  };
}

/** "four down from the top", "three rows down", "third along", "second from the left". */
function countedWay(
  tokens: Token[],
  i: number,
): { axis: 'row' | 'block'; value: number; back: boolean; next: number } | undefined {
  const count = readCount(tokens, i);
  const n = count ?? readOrdinal(tokens, i);
  if (!n || n.value > 40) return undefined;
  let j = n.next;
  if (count && (ROWS.has(w(tokens, j)) || BLOCKS.has(w(tokens, j)) || COLUMNS.has(w(tokens, j)))) j++;
  const way = w(tokens, j);
  const end =
    w(tokens, j + 1) === 'from' && w(tokens, j + 2) === 'the'
      ? w(tokens, j + 3)
      : way === 'from'
        ? w(tokens, j + 2)
        : '';
  if (/^(down|up)$/.test(way)) {
    const told = /^(top|bottom)$/.test(end);
    if (way === 'up' && end !== 'bottom') return undefined;
    return { axis: 'row', value: n.value, back: way === 'up', next: told ? j + 4 : j + 1 };
  }
  if (/^(across|along|over|in)$/.test(way)) {
    const told = /^(left|right)$/.test(end);
    if (way === 'in' && !told) return undefined;
    return { axis: 'block', value: n.value, back: end === 'right', next: told ? j + 4 : j + 1 };
  }
  if (way === 'from' && w(tokens, j + 1) === 'the' && /^(left|right)$/.test(end))
    return { axis: 'block', value: n.value, back: end === 'right', next: j + 3 };
  return undefined;
}

/** "3-2", "three two", "3-1 to 3-4", "three one, three two and three four". */
export function pair(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  const before = w(tokens, i - 1);
  if (before === '$' || before === '£' || before === '€') return undefined;
  const first = readPair(tokens, i, grid) ?? heardPair(tokens, i, grid);
  if (!first) return undefined;
  if (first.outside) {
    if (first.loose)
      return namesBlockAlone(tokens, i, first.next)
        ? { next: first.next, places: [], how: 'said', rule: 'place.pair', kind: 'blocks', outside: true }
        : undefined;
    // "10-12" and "9-12" may be hours; only a small dash pair names a block that is not there.
    const big = tokens[i]!.value! > 12 || (tokens[i + 2]?.value ?? 0) > 12;
    return big
      ? undefined
      : { next: first.next, places: [], how: 'said', rule: 'place.pair', kind: 'blocks', outside: true };
  }
  const places = [first.place!];
  let next = first.next;
  const across =
    /^(down|across|along|over|up|right)$/.test(w(tokens, next)) &&
    /^(to|through|till|until)$/.test(w(tokens, next + 1));
  if (across || ['to', 'through', 'thru', '-', 'till'].includes(w(tokens, next))) {
    if (across) next++;
    const last = readPair(tokens, next + 1, grid);
    if (last?.place) {
      const a = splitBlock(first.place!)!;
      const b = splitBlock(last.place)!;
      const range =
        a.row === b.row
          ? countUp(a.block, b.block).map((k) => `${a.row}-${k}`)
          : a.block === b.block
            ? countUp(a.row, b.row).map((k) => `${k}-${a.block}`)
            : countUp(a.row, b.row).flatMap((r) => countUp(a.block, b.block).map((k) => `${r}-${k}`));
      return blocksSaid(last.next, thatAre(grid, range), 'place.pair-range');
    }
    // "3-1 to 4", "3-1 through 5": to block 4 of the same row
    const short = readCount(tokens, next + 1);
    const a = splitBlock(first.place!)!;
    if (
      short &&
      !first.loose &&
      short.value > a.block &&
      short.value <= gridOfRow(grid, a.row).blocks &&
      !UNIT_AFTER.has(w(tokens, short.next)) &&
      w(tokens, next) !== '-'
    ) {
      places.push(...countUp(a.block + 1, short.value).map((k) => `${a.row}-${k}`));
      next = short.next;
    }
  }
  const more = first.loose ? undefined : moreOfRow(tokens, next, places, grid);
  if (more) {
    places.push(...more.places);
    next = more.next;
  }
  return { next, places: thatAre(grid, places), how: 'said', rule: 'place.pair', kind: 'blocks' };
}

/** "1-1,2,3 darned", "3-2/3/4": more blocks of the row, each by its number alone and without a blank. */
function moreOfRow(
  tokens: Token[],
  from: number,
  told: string[],
  grid: QuiltGrid,
): { places: string[]; next: number } | undefined {
  const start = told.length === 1 ? splitBlock(told[0]!) : undefined;
  const mark = w(tokens, from);
  if (!start || !/^[,/+&]$/.test(mark)) return undefined;
  const places: string[] = [];
  let next = from;
  let last = start.block;
  while (w(tokens, next) === mark && tokens[next]!.glued && tokens[next + 1]?.glued) {
    const { w: digits } = tokens[next + 1]!;
    const place = /^\d{1,2}$/.test(digits) ? blockAt(grid, start.row, Number(digits)) : undefined;
    if (!place || Number(digits) <= last || /^[-.x:]$/.test(w(tokens, next + 2))) break;
    places.push(place);
    last = Number(digits);
    next += 2;
  }
  const after = w(tokens, next);
  // "3-2/3 yd", "2-1,4 ties gone": amounts
  if (!places.length || UNIT_AFTER.has(after) || (mark === '/' && places.length < 2)) return undefined;
  if (places.length < 2 && /s$/.test(after) && !/^(is|has|was)$/.test(after)) return undefined;
  return { places, next };
}
