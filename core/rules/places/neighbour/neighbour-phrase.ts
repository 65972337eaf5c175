import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { oneAtSide } from '../group-spoken-of.ts';
import { isCorner, lastBlock } from '../last-block.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { allBeyond } from './all-beyond.ts';
import { betweenTwo } from './between-two.ts';
import { countedFrom } from './counted-from.ts';
import { isNoNeighbour } from './is-no-neighbour.ts';
import { lineBeside } from './line-beside.ts';
import { isOneOfLine, nthOfLine } from './nth-of-line.ts';
import { allSteps, CROSS, oneStep, SIDES, STEPS, type Ways, wayAt, waysAt } from './ways-at.ts';
import { straightBelow, whereItLies } from './where-it-lies.ts';

/**
 * Blocks told by where they lie from another: "the one below it", "two along from that", "the blocks above and below 2-2",
 * "its right-hand neighbour", "the one below and to the left", "the one below 3-2"; `placeAt` reads the blocks named at a token. The seam "between that and the one below", "the one going to its
 * right-hand neighbour": with the block that it is counted from.
 */
export function neighbourPhrase(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  if (isOneOfLine(tokens, i) || isNoNeighbour(tokens, i)) return undefined;
  const found = oneAtSide(tokens, i, ctx) ? undefined : neighbourAt(tokens, i, ctx, placeAt);
  if (found?.places.length !== 1 || !seamLeadsTo(tokens, i)) return found;
  const base = lastBlock(ctx);
  return base && !found.places.includes(base) ? { ...found, places: [base, ...found.places] } : found;
}

function seamLeadsTo(tokens: Token[], i: number): boolean {
  const before = `${w(tokens, i - 3)} ${w(tokens, i - 2)} ${w(tokens, i - 1)}`;
  const seam = (): boolean => tokens.slice(Math.max(0, i - 10), i).some((t) => /^seams?$/.test(t.w));
  // "between it and", "joining that to", "where it meets"; "between that one and" names its block itself
  if (/^between (?:that|this|it) and$/.test(before)) return true;
  if (
    /(?:joining|joins) (?:that|this|it) (?:to|onto|with|and)$|(?:that|this|it) (?:meets|joins)$/.test(before)
  )
    return seam();
  // "the seam with the one below is open"
  if (/seams? (with|against|to|onto)$/.test(before)) return true;
  return (
    /(going|goes|leading|leads|running|runs|joining|joins|on|shared|shares) (to|onto|into|with)$/.test(
      before,
    ) && seam()
  );
}

const TIME_BEHIND =
  /^(?:supper|tea|dinner|lunch|breakfast|bed|bedtime|dark|dusk|noon|midday|midnight|work|church|school|tomorrow|tonight|today|i|we|she|he|they|calling|going|stopping|packing|finishing|knocking|leaving|closing)$/;

function neighbourAt(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const beyond = allBeyond(tokens, i, ctx, placeAt);
  if (beyond) return beyond;
  const counted = nthOfLine(tokens, i, ctx) ?? straightBelow(tokens, i, ctx);
  if (counted) return counted;
  let j = i;
  let the = false;
  let head: 'one' | 'many' | 'count' | 'none' = 'none';
  let count: number | undefined;
  if (/^(the|its|all|both|that|any)$/.test(w(tokens, j))) {
    the = w(tokens, j) === 'the' || w(tokens, j) === 'all';
    j++;
    if (/^(the|its)$/.test(w(tokens, j))) j++;
  }
  const second = nextButOne(tokens, j);
  if (second) return countedFrom(tokens, second, { ctx, placeAt }, { distance: 2 });
  // "the next one to the right of that tear"
  if (
    w(tokens, j) === 'next' &&
    (w(tokens, j + 1) === 'one' || BLOCK_NOUNS.has(w(tokens, j + 1))) &&
    wayAt(tokens, j + 2, undefined)
  )
    j++;
  const adjective = neighbourOf(tokens, i, j, ctx, placeAt);
  if (adjective) return adjective;
  const noun = w(tokens, j);
  if (
    /^(previous|preceding)$/.test(noun) &&
    (BLOCK_NOUNS.has(w(tokens, j + 1)) || w(tokens, j + 1) === 'one')
  )
    return countedFrom(tokens, oneStep(STEPS.get('before')!, j + 2), { ctx, placeAt });
  // "the corner block beside it": on whichever side the corner is
  if (noun === 'corner' && (w(tokens, j + 1) === 'one' || BLOCK_NOUNS.has(w(tokens, j + 1)))) {
    const ways = waysAt(tokens, j + 2, undefined);
    const found = ways && countedFrom(tokens, ways, { ctx, placeAt });
    const sides = ways && countedFrom(tokens, allSteps(CROSS, ways.next), { ctx, placeAt }, { many: true });
    const corner = sides?.places.filter((p) => isCorner(ctx, p)) ?? [];
    return found && corner.length === 1 ? { ...found, places: corner, outside: undefined } : undefined;
  }
  if (/^(one|ones|pair)$/.test(noun) || BLOCK_NOUNS.has(noun)) {
    head = /s$/.test(noun) || noun === 'pair' ? 'many' : 'one';
    j++;
  } else {
    const n = readCount(tokens, j);
    if (n && n.value <= 8) {
      head = 'count';
      count = n.value;
      j = n.next;
      if (w(tokens, j) === 'ones' || BLOCK_NOUNS.has(w(tokens, j))) j++;
    }
  }
  // "one up and over" and "two below": a bare count is told again as a number of steps
  if (noun === 'one' && !the && j === i + 1) head = 'count';
  if (noun === 'one' && head === 'count') count = 1;
  // "two rows down from there it's thin", "a couple of rows below that": the block that lies so many rows away
  const rows = head === 'count' && !the && /^rows?$/.test(w(tokens, j)) ? rowsAway(tokens, j + 1) : undefined;
  if (rows && count) return countedFrom(tokens, rows, { ctx, placeAt }, { distance: count });
  let distance = head === 'count' && !the ? (count ?? 1) : 1;
  if (head === 'one' && the) {
    const far = readCount(tokens, j);
    if (far && far.value > 1 && far.value < 7) {
      distance = far.value;
      j = far.next;
      if (/^(blocks|along|squares)$/.test(w(tokens, j)) && wayAt(tokens, j + 1, undefined)) j++;
    }
  }
  if (head === 'none') return whereItLies(tokens, i, ctx, placeAt);
  // "one more block before supper": a time, and no way along the row
  if (/^(?:before|after)$/.test(w(tokens, j)) && TIME_BEHIND.test(w(tokens, j + 1))) return undefined;
  // "darned another one after that": later, and where nobody has said
  if (
    /^(?:before|after)$/.test(w(tokens, j)) &&
    [w(tokens, i), w(tokens, i - 1), w(tokens, j - 1)].some((word) => /^(?:another|more)$/.test(word))
  )
    return undefined;
  const between = betweenTwo(tokens, j, ctx, placeAt);
  if (between) return between;
  const ways = waysAt(tokens, j, head === 'count' ? count : undefined);
  if (!ways) return undefined;
  // "darned one more block before supper": when it was
  if (
    j === i + 1 &&
    /^(before|after)$/.test(w(tokens, j)) &&
    !/^(|[.,;:]|it|that|this|is|'s|has|too|as|\d+)$/.test(w(tokens, j + 1))
  )
    return undefined;
  const line =
    head === 'one' && the && distance === 1 && noun === 'one' ? lineBeside(tokens, ways, ctx) : undefined;
  if (line) return line;
  // "bled into the ones beside it", "the blocks next to it": on both sides
  if (head === 'many' && ways.list.length === 1 && ways.list[0]!.slack)
    return countedFrom(tokens, allSteps(SIDES, ways.next), { ctx, placeAt }, { many: true });
  // "the two beside 3-3", "the pair next to it": one on either side
  if (the && count === 2 && ways.list.length === 1 && ways.list[0]!.slack) {
    const both = countedFrom(tokens, allSteps(SIDES, ways.next), { ctx, placeAt }, { many: true });
    if (both?.places.length === 2) return both;
  }
  const spread = the && head === 'count' ? (count ?? 1) : undefined;
  // a bare direction needs what it is counted from, or the end of what is said of it
  return countedFrom(
    tokens,
    ways,
    { ctx, placeAt },
    {
      distance,
      spread,
      many: head === 'many',
      needsEnd: head === 'count' && !the && !/^(further|farther)$/.test(w(tokens, j)),
      fromCorner: true,
    },
  );
}

/** "the next but one", "the next one but one down", "the next block but one": two steps on. */
function nextButOne(tokens: Token[], j: number): Ways | undefined {
  if (w(tokens, j) !== 'next') return undefined;
  let k = w(tokens, j + 1) === 'one' || BLOCK_NOUNS.has(w(tokens, j + 1)) ? j + 2 : j + 1;
  if (w(tokens, k) !== 'but' || w(tokens, k + 1) !== 'one') return undefined;
  k += 2;
  const way = /^(down|up|along|across|below|above)$/.test(w(tokens, k))
    ? wayAt(tokens, k, undefined)
    : undefined;
  return way ? { list: [way], next: way.next } : oneStep(STEPS.get('along')!, k);
}

/** "(two rows) down from there", "above that": told from a block that was spoken of. */
function rowsAway(tokens: Token[], k: number): Ways | undefined {
  const step = STEPS.get(w(tokens, k));
  if (!step?.row || w(tokens, k) === 'under') return undefined;
  const joint = w(tokens, k + 1) === 'from' ? k + 2 : k + 1;
  return /^(that|there|it)$/.test(w(tokens, joint)) ? oneStep(step, k + 1) : undefined;
}

/** The side of a neighbour as the step that leads to it. */
const SIDE_TOLD = new Map(Object.entries({ upper: 'above', lower: 'below', lh: 'left', rh: 'right' }));

/** What the people next door have or do. */
const PEOPLE =
  /^(dogs?|cats?|kids?|children|child|boys?|girls?|baby|car|alarm|drill|drilling|music|telly|tv|radio|hoover|mower|lawnmower|builders?|phone|door|doorbell|bell|garden|at|again|party|shouting|arguing|hammering|moving|home|out)$/;

/**
 * "the violet sprig has run into its neighbours": wherever that cloth is, and not beside the block that was told of before; "it has run
 * into its neighbours" is of that block.
 */
function hasRunInto(tokens: Token[], i: number): boolean {
  if (!/^(?:into|onto)$/.test(w(tokens, i - 1)) || !RUN.test(w(tokens, i - 2))) return false;
  let k = i - 3;
  while (RUN.test(w(tokens, k)) || /^(?:has|have|'s|'ve|is|all|also|just)$/.test(w(tokens, k))) k--;
  return (
    /^[a-z]{3,}$/.test(w(tokens, k)) &&
    !/^(?:that|this|dye|dyes|colou?r|one|two|three|four|five|six|seven|eight|nine|ten|there|and)$/.test(
      w(tokens, k),
    )
  );
}

const RUN = /^(?:run|ran|bled|bleeding|running|gone|leached|seeped|leaked)$/;

/** "its right-hand neighbour", "neighbour to the right", "both its neighbours", "the neighbour below". */
function neighbourOf(
  tokens: Token[],
  i: number,
  j: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  let k = j;
  const side = /^(left|right|upper|lower|lh|rh)$/.test(w(tokens, k)) ? w(tokens, k) : undefined;
  if (side) k++;
  if (w(tokens, k) === 'hand') k++;
  const n = readCount(tokens, k);
  if (n) k = n.next;
  if (!/^neighbou?rs?$/.test(w(tokens, k))) return undefined;
  const many = w(tokens, k).endsWith('s');
  if (side) {
    const step = STEPS.get(SIDE_TOLD.get(side) ?? side)!;
    return countedFrom(tokens, oneStep(step, k + 1), { ctx, placeAt });
  }
  const ways = waysAt(tokens, k + 1, undefined);
  if (ways) return countedFrom(tokens, ways, { ctx, placeAt }, { many });
  // "ugh, neighbour's dog at it again", "the neighbours are drilling": people
  const led = i < j || side !== undefined || n !== undefined;
  // "same goes for its neighbour": at the end of a row there is but one, and elsewhere nobody knows which
  if (!many && w(tokens, i) === 'its' && !PEOPLE.test(w(tokens, k + 1))) {
    const sides = countedFrom(tokens, allSteps(SIDES, k + 1), { ctx, placeAt }, { many: true });
    return sides && sides.places.length > 1
      ? { ...sides, places: [], rule: 'place.one-of', outside: undefined }
      : sides;
  }
  if (many && hasRunInto(tokens, i)) return undefined;
  if (!many || !led || PEOPLE.test(w(tokens, k + 1)) || PEOPLE.test(w(tokens, k + 2))) return undefined;
  const four = n?.value === 4 || w(tokens, i) === 'all';
  return countedFrom(tokens, allSteps(four ? CROSS : SIDES, k + 1), { ctx, placeAt }, { many: true });
}
