import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import { blockAt, splitBlock } from '../places/grid.ts';
import { UNIT_AFTER } from '../places/place-tokens.ts';
import { isDeedAt, sensesAt } from './senses-at.ts';
import type { SlipRule } from './slip-rule.ts';
import { smallValue } from './small-number-said.ts';

/** After these a stretch of numbers is one of rows, blocks or hours. */
const LISTED =
  /^(?:rows?|blocks?|columns?|cols?|rose|from|at|since|until|till|r|b|nos?|numbers?|strips?|squares?|borders?)$/;
/** Before these a number and its neighbour are a length, a price, a time of day. */
const OF_ANOTHER_MATTER =
  /^(?:o'clock|am|pm|by|x|past|and-a-half|each|dollars?|pounds?|euros?|percent|%|weeks?|days?|years?|rows?|blocks?|columns?|th|st|nd|rd|to|-|\/)$/;
const PLACED = /^(?:in|on|over|behind|under|of|at)$/;

/** Two numbers that name a block of this quilt, with what stands between them. */
type Pair = { row: Token; block: Token; between: string; from: number; next: number };

function pairAt(tokens: readonly Token[], i: number, grid: QuiltGrid): Pair | undefined {
  const row = smallValue(tokens[i]);
  if (row === undefined) return undefined;
  const joint = /^(?:to|too|,|-)$/.test(tokens[i + 1]?.w ?? '') ? tokens[i + 1]!.w : '';
  const j = joint ? i + 2 : i + 1;
  const block = smallValue(tokens[j]);
  if (block === undefined || !blockAt(grid, row, block)) return undefined;
  const after = tokens[j + 1]?.w ?? '';
  if (OF_ANOTHER_MATTER.test(after) && !(joint === '-' && after === 'by')) {
    if (!/^(?:to|-|by)$/.test(after)) return undefined;
  }
  if (UNIT_AFTER.has(after) && after !== 'in' && after !== 'of') return undefined;
  return { row: tokens[i]!, block: tokens[j]!, between: joint, from: i, next: j + 1 };
}

/** The pair as a block's name is typed. */
function named({ row, block }: Pair): Token[] {
  const figure = (token: Token, glued: boolean): Token => ({
    ...token,
    kind: 'number',
    w: String(smallValue(token)),
    value: smallValue(token)!,
    glued,
    heard: token.w,
  });
  return [
    figure(row, false),
    { ...row, kind: 'mark', w: '-', from: row.to, to: block.from, glued: true },
    figure(block, true),
  ];
}

const isFound = (tokens: readonly Token[], i: number): boolean =>
  sensesAt(tokens, i).some((s) => s.k === 'finding' || s.k === 'fail');
/** Is a damage or a deed told in these words, and no hour? */
const tells = (words: readonly Token[]): boolean =>
  words.some((_, k) => isFound(words, k) || isDeedAt(words, k, 'past')) &&
  !words.some(
    ({ w }, k) =>
      /^(?:min|mins|minutes|hours?|pm|am|break|till|until)$/.test(w) || (k === 0 && /ing$/.test(w)),
  );
const BE = /^(?:is|are|'s|has|had|was|were|needs|got|wants|gets|looks|smells)$/;

/** A row, a column or blocks by their number are named near by: the numbers may be theirs. */
const linesNamed = (before: readonly Token[]): boolean =>
  before.slice(-14).some(({ w }) => /^(?:rows?|columns?|cols?|blocks|rose)$/.test(w));

/**
 * "two to three to two to five" (2-3 to 2-5); "between 2 to 4 and 3 to 4"; "1 to 5 and 4, 4 from behind"; "3 to 5 patched"; "patched
 * 2 to 3 with": a "to" that is the dash of a block's name, where a stretch makes no sense.
 */
const dashSaid: SlipRule = ({ tokens, i, before, grid }) => {
  if (!grid) return undefined;
  const first = pairAt(tokens, i, grid);
  if (!first) return undefined;
  const left = before.at(-1)?.w ?? '';
  if (smallValue(before.at(-1)) !== undefined || left === '-' || left === '/') return undefined;
  const isTo = first.between === 'to' || first.between === 'too';
  const joint = tokens[first.next];
  const second = joint ? pairAt(tokens, first.next + 1, grid) : undefined;
  const secondTo = second?.between === 'to' || second?.between === 'too';
  const made = (pairs: Pair[], next: number): ReturnType<SlipRule> => ({
    tokens: pairs.flatMap((pair, k) => [
      ...(k > 0 ? tokens.slice(pairs[k - 1]!.next, pair.from) : []),
      ...named(pair),
    ]),
    took: next - i,
    rule: 'slip.block-name',
  });
  // "the seam that joins three, two, to three, three": from one block to another
  if ((first.between === ',' || first.between === '') && !LISTED.test(left)) {
    const to = joint?.w === ',' && tokens[first.next + 1]?.w === 'to' ? first.next + 1 : first.next;
    const last = tokens[to]?.w === 'to' ? pairAt(tokens, to + 1, grid) : undefined;
    if (last?.between === ',' && before.some(({ w }) => /^(?:seams?|joins?|between|from)$/.test(w)))
      return {
        tokens: [...named(first), tokens[to]!, ...named(last)],
        took: last.next - i,
        rule: 'slip.block-name',
      };
    // "in one, two and two five it's shattered"
    if (
      first.between === ',' &&
      joint?.w === 'and' &&
      second?.between === '' &&
      PLACED.test(left) &&
      !OF_ANOTHER_MATTER.test(tokens[second.next]?.w ?? '')
    )
      return made([first, second], second.next);
    // "moth in 1, 1 and 1 to 4, darn them"
    if (
      first.between === ',' &&
      joint?.w === 'and' &&
      secondTo &&
      (PLACED.test(left) || isOpen(left)) &&
      !OF_ANOTHER_MATTER.test(tokens[second!.next]?.w ?? '')
    )
      return made([first, second!], second!.next);
    // "2, 1, 4 to 7, net over"
    if (first.between === ',' && joint?.w === ',' && secondTo && isOpen(left) && second!.next < tokens.length)
      return made([first, second!], second!.next);
  }
  // a stretch from one block to another
  if (isTo && second && secondTo && joint?.w === 'to') return made([first, second], second.next);
  if (left === 'between' && second && joint?.w === 'and' && (isTo || secondTo))
    return made([first, second], second.next);
  // "squares 2 to 3 and 2 to 4": two stretches in one row would be none
  if (/^(?:blocks|squares)$/.test(left) && isTo && secondTo && /^(?:and|&)$/.test(joint?.w ?? ''))
    return made([first, second!], second!.next);
  if (!isTo || LISTED.test(left) || OF_ANOTHER_MATTER.test(joint?.w ?? '')) return undefined;
  // one of several
  const listed = (k: number): Pair | undefined =>
    /^(?:and|,|plus|&|\+)$/.test(tokens[k]?.w ?? '') ? pairAt(tokens, k + 1, grid) : undefined;
  const more = listed(first.next);
  if (
    more &&
    (more.between === ',' || more.between === '-' || more.between === '') &&
    !OF_ANOTHER_MATTER.test(tokens[more.next]?.w ?? '')
  )
    return made([first, more], more.next);
  const pairs = [first];
  for (let next = more; next && next.between !== ''; next = listed(next.next)) pairs.push(next);
  if (pairs.length > 1 && (PLACED.test(left) || isOpen(left) || isDeedAt(before, before.length - 1, 'past')))
    return made(pairs, pairs.at(-1)!.next);
  if (linesNamed(before)) return undefined;
  const right = joint?.w ?? '';
  // "tear 2 to 4, moth in the tartan", "tear two to four": what was found, and where
  if (
    /^(?:|,|\.|;|and|moth)$/.test(right) &&
    before.length > 0 &&
    isFound(before, before.length - 1) &&
    /^(?:|\.|,|;|and|small|big|a|mending|start|bad)$/.test(before.at(-2)?.w ?? '')
  )
    return made([first], first.next);
  // "fabric for 1 to 7", "the velvet in 2 to 3 has a bit missing"
  if (left === 'for' && /^(?:cloth|fabric|piece|patch|silk|cotton)$/.test(before.at(-2)?.w ?? ''))
    return made([first], first.next);
  if (/^(?:in|on|over|behind)$/.test(left) && /^(?:is|has|'s|was|needs|got)$/.test(right))
    return made([first], first.next);
  if (isOpen(left)) {
    if (isDeedAt(tokens, first.next, 'past') || isFound(tokens, first.next)) return made([first], first.next);
    // "1 to 3, patch or darn"
    if (right === ',' && isDeedAt(tokens, first.next + 1, 'base') && tokens[first.next + 2]?.w === 'or')
      return made([first], first.next);
    // "1 to 3, the rabbit has a tear"
    if (right === ',' && (left === '' || left === '.') && tells(tokens.slice(first.next + 1, first.next + 8)))
      return made([first], first.next);
    return undefined;
  }
  if (PLACED.test(left) && left !== 'at' && right === ',' && !tokens[first.next + 1]) return undefined;
  if (/^(?:on|in)$/.test(left) && /^(?:to|towards|just)$/.test(right) && tokens[first.next + 1]?.w === 'the')
    return made([first], first.next);
  return before.length &&
    isDeedAt(before, before.length - 1, 'past') &&
    /^(?:|,|\.|with|by|and|in|again|too)$/.test(right)
    ? made([first], first.next)
    : undefined;
};
const isOpen = (left: string): boolean => /^(?:|\.|,|;|:|and|so|okay|right|then)$/.test(left);

/** "in 55 it's torn", "sewed 6162 back together": figures run together; each pair of them is a block. */
const runTogether: SlipRule = ({ tokens, i, before, grid }) => {
  const t = tokens[i]!;
  if (!grid || !/^(?:[1-9]{2}|[1-9]{4})$/.test(t.w)) return undefined;
  // a year
  if (/^(?:1[89]|20)\d\d$/.test(t.w)) return undefined;
  const left = before.at(-1)?.w ?? '';
  const right = tokens[i + 1]?.w ?? '';
  const awaited =
    /^(?:in|on|over|behind|between|under)$/.test(left) ||
    (before.length > 0 && isDeedAt(before, before.length - 1, 'past'));
  if (!awaited && !/^(?:back|together)$/.test(right)) return undefined;
  if (UNIT_AFTER.has(right) && right !== 'in') return undefined;
  // "raffled off in 74" is a year: something must have been found or done there
  if (
    !/^(?:back|together)$/.test(right) &&
    !before
      .slice(-5)
      .some(
        (_, k, near) =>
          isFound(near, k) || isDeedAt(near, k, 'past') || /^(?:piece|patch|it|seam)$/.test(near[k]!.w),
      )
  )
    return undefined;
  if (
    !/^(?:|,|\.|;|and|is|'s|was|has|had|with|by|i|it|back|together|again|in|where|there|they|from|too|as)$/.test(
      right,
    )
  )
    return undefined;
  if (
    right === 'and' &&
    smallValue(tokens[i + 2]) === undefined &&
    before.some(({ w }) => /^(?:19|18)$/.test(w))
  )
    return undefined;
  const pairs = t.w.match(/../g)!.map((two) => [Number(two[0]), Number(two[1])] as const);
  if (!pairs.every(([row, block]) => blockAt(grid, row, block))) return undefined;
  return {
    tokens: pairs.flatMap(([row, block], k) => [
      ...(k > 0 ? [{ ...t, kind: 'word' as const, w: 'and', glued: false, value: undefined }] : []),
      { ...t, w: String(row), value: row, glued: false, heard: t.w },
      { ...t, kind: 'mark' as const, w: '-', glued: true, value: undefined },
      { ...t, w: String(block), value: block, glued: true, heard: t.w },
    ]),
    took: 1,
    rule: 'slip.block-name',
  };
};

/** "not 3-3-3-2": two blocks, one after the other, and no stretch from the first to the second. */
const chained: SlipRule = ({ tokens, i, before, grid }) => {
  if (!grid || before.at(-1)?.w === '-') return undefined;
  const pairs: Pair[] = [];
  let next = i;
  for (;;) {
    const pair = pairAt(tokens, next, grid);
    if (pair?.between !== '-') break;
    pairs.push(pair);
    next = pair.next;
    if (tokens[next]?.w !== '-' || !tokens[next]!.glued) break;
    next++;
  }
  if (pairs.length < 2 || next !== pairs.at(-1)!.next) return undefined;
  return {
    tokens: pairs.flatMap((pair, k) => [
      ...(k > 0 ? [{ ...pair.row, kind: 'mark' as const, w: ',', glued: true, value: undefined }] : []),
      ...named(pair),
    ]),
    took: next - i,
    rule: 'slip.block-name',
  };
};

const FIRST = new Map(Object.entries({ for: 4, fore: 4, to: 2, too: 2, won: 1, free: 3, tree: 3 }));
const SECOND = new Map(Object.entries({ for: 4, fore: 4, to: 2, too: 2, won: 1, free: 3, tree: 3, ate: 8 }));
const heardFirst = (t: Token | undefined): number | undefined => smallValue(t) ?? FIRST.get(t?.w ?? '');
const heardSecond = (t: Token | undefined): number | undefined => smallValue(t) ?? SECOND.get(t?.w ?? '');

const figures = (like: Token, last: Token, row: number, block: number): Token[] => [
  { ...like, kind: 'number', w: String(row), value: row, glued: false, heard: like.w },
  { ...like, kind: 'mark', w: '-', glued: true, value: undefined },
  { ...last, kind: 'number', w: String(block), value: block, glued: true, heard: last.w },
];

/** "for three has a hole": 4-3, where it opens a statement. */
const opensWithBlock: SlipRule = ({ tokens, i, before, grid }) => {
  const t = tokens[i]!;
  if (!grid || !FIRST.has(t.w) || !/^(?:|\.|,|;)$/.test(before.at(-1)?.w ?? '')) return undefined;
  const row = FIRST.get(t.w)!;
  const block = heardSecond(tokens[i + 1]);
  if (block === undefined || !blockAt(grid, row, block)) return undefined;
  if (!BE.test(tokens[i + 2]?.w ?? '') && !isFound(tokens, i + 2) && !isDeedAt(tokens, i + 2, 'past'))
    return undefined;
  return { tokens: figures(t, tokens[i + 1]!, row, block), took: 2, rule: 'slip.block-name' };
};

/** "no 2 for those two are replaced": 2-4 */
const forBeforeThose: SlipRule = ({ tokens, i, before, grid }) => {
  const row = smallValue(tokens[i]);
  if (!grid || row === undefined || tokens[i + 1]?.w !== 'for' || !blockAt(grid, row, 4)) return undefined;
  if (
    !/^(?:no|and|in|on|sorry|,)$/.test(before.at(-1)?.w ?? '') ||
    !/^(?:those|both|these)$/.test(tokens[i + 2]?.w ?? '')
  )
    return undefined;
  return { tokens: figures(tokens[i]!, tokens[i + 1]!, row, 4), took: 2, rule: 'slip.block-name' };
};

/** "that piece in 4 to it was frayed": 4-2 */
const toBeforeIt: SlipRule = ({ tokens, i, before, grid }) => {
  const row = smallValue(tokens[i]);
  if (!grid || row === undefined || !/^(?:to|too)$/.test(tokens[i + 1]?.w ?? '') || !blockAt(grid, row, 2))
    return undefined;
  if (!/^(?:in|on|over|behind)$/.test(before.at(-1)?.w ?? '')) return undefined;
  if (
    !/^(?:it|there|i)$/.test(tokens[i + 2]?.w ?? '') ||
    !/^(?:is|was|'s|has|had|'ve|got|have|looks)$/.test(tokens[i + 3]?.w ?? '')
  )
    return undefined;
  return { tokens: figures(tokens[i]!, tokens[i + 1]!, row, 2), took: 2, rule: 'slip.block-name' };
};

/** "seam to one slash to two": 2-1/2-2, the seam between them. */
const seamSlash: SlipRule = ({ tokens, i, grid }) => {
  if (!grid || !/^(?:slash|slush|flash|\/)$/.test(tokens[i + 2]?.w ?? '')) return undefined;
  const numbers = [
    heardFirst(tokens[i]),
    heardSecond(tokens[i + 1]),
    heardFirst(tokens[i + 3]),
    heardSecond(tokens[i + 4]),
  ];
  const [a, b, c, d] = numbers;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  if (!blockAt(grid, a, b) || !blockAt(grid, c, d) || (a === c && b === d)) return undefined;
  return {
    tokens: [
      ...figures(tokens[i]!, tokens[i + 1]!, a, b),
      { ...tokens[i + 2]!, kind: 'word', w: 'and' },
      ...figures(tokens[i + 3]!, tokens[i + 4]!, c, d),
    ],
    took: 5,
    rule: 'slip.block-name',
  };
};

/**
 * "the seam between four and four five": of two like numbers one is lost. 4-4 only where it lies beside the block that was
 * heard whole.
 */
const twinLost: SlipRule = ({ tokens, i, before, grid }) => {
  if (!grid || before.at(-1)?.w !== 'between' || tokens[i + 1]?.w !== 'and') return undefined;
  const twin = smallValue(tokens[i]);
  const other = pairAt(tokens, i + 2, grid);
  if (twin === undefined || !other || other.between === 'to') return undefined;
  const place = splitBlock(blockAt(grid, twin, twin) ?? '');
  if (!place) return undefined;
  const apart = Math.abs(twin - smallValue(other.row)!) + Math.abs(twin - smallValue(other.block)!);
  if (apart !== 1) return undefined;
  return {
    tokens: [...figures(tokens[i]!, tokens[i]!, twin, twin), tokens[i + 1]!, ...named(other)],
    took: other.next - i,
    rule: 'slip.block-name',
  };
};

/** "one, one, two, two, four, four, four": in a list of pairs the last number was heard twice. */
const stuttered: SlipRule = ({ tokens, i, before, grid }) => {
  if (!grid || before.at(-1)?.w === ',' || LISTED.test(before.at(-1)?.w ?? '')) return undefined;
  const at: number[] = [];
  for (let k = i; smallValue(tokens[k]) !== undefined; k += 2) {
    at.push(k);
    if (tokens[k + 1]?.w !== ',') break;
  }
  if (at.length < 5 || at.length % 2 === 0) return undefined;
  const values = at.map((k) => smallValue(tokens[k])!);
  if (values.at(-1) !== values.at(-2)) return undefined;
  const last = at.at(-2)!;
  for (let k = 0; k + 1 < values.length; k += 2)
    if (!blockAt(grid, values[k]!, values[k + 1]!)) return undefined;
  return {
    tokens: tokens.slice(i, last + 1) as Token[],
    took: at.at(-1)! + 1 - i,
    rule: 'slip.block-name',
  };
};

/** "patched five five in teal": what follows is the cloth, and no inches. */
const inCloth: SlipRule = ({ tokens, i, before, grid }) => {
  if (!grid || !before.length || !isDeedAt(before, before.length - 1, 'past')) return undefined;
  const pair = pairAt(tokens, i, grid);
  if (pair?.between !== '' || tokens[pair.next]?.w !== 'in') return undefined;
  const after = tokens[pair.next + 1];
  if (after?.kind !== 'word' || /^(?:wide|long|strips?|deep|square|apart|lengths?|pieces)$/.test(after.w))
    return undefined;
  return { tokens: named(pair), took: pair.next - i, rule: 'slip.block-name' };
};

/**
 * Names of blocks that the recogniser wrote as a stretch, a sum or other words. Only in what was heard, only blocks that this
 * quilt has, and always marked as heard otherwise.
 */
export const BLOCKS_HEARD: readonly SlipRule[] = [
  chained,
  twinLost,
  dashSaid,
  runTogether,
  opensWithBlock,
  forBeforeThose,
  toBeforeIt,
  seamSlash,
  stuttered,
  inCloth,
];
