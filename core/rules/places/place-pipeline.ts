import type { Token } from '../../text/tokenise.ts';
import { alongRow } from './along-row.ts';
import { betweenBlocks } from './between-blocks.ts';
import { blockFirst } from './block-first.ts';
import { commaPairs } from './comma-pairs.ts';
import { contrasted, contrastedBare } from './contrast/contrasted.ts';
import { CORNER_RULES, middleBlock } from './corner-rules.ts';
import { countedAlong } from './counted-along.ts';
import { countedGroup } from './counted-group.ts';
import { everyBlock, sideColumn } from './every-block.ts';
import { cornerPhrase } from './find-corner.ts';
import { namedPlace } from './find-named-place.ts';
import { linePhrase } from './line/line-phrase.ts';
import { linesBeside } from './line/lines-beside.ts';
import { lineReached, reachedAlong } from './line-reached.ts';
import { lineSpoken } from './line-spoken.ts';
import { blockOfCloth } from './neighbour/block-of-cloth.ts';
import { neighbourPhrase } from './neighbour/neighbour-phrase.ts';
import { oneOfThem } from './one-of-them.ts';
import { ordinalFirst } from './ordinal-first.ts';
import { downAndAcross, pair } from './pair.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { PLACE_HEADS } from './place-heads.ts';
import { allBut } from './pointers/all-but.ts';
import { backPointer } from './pointers/back-pointer.ts';
import { inOtherRow, lineAfterLine } from './pointers/line-after-line.ts';
import { neighbour } from './pointers/neighbour.ts';
import { pickedOfLine } from './pointers/picked-of-line.ts';
import { restOfLines } from './pointers/rest-of-lines.ts';
import { sideLike } from './pointers/side-like.ts';
import { sidesAgain } from './pointers/sides-again.ts';
import { thatSide } from './pointers/that-side.ts';
import { columnFirst, rowFirst } from './row-first.ts';
import { shortCross } from './short-cross.ts';
import { sidedPart } from './side/sided-part.ts';

type Finder = (tokens: Token[], i: number, ctx: PlaceContext) => PlaceFound | undefined;

/**
 * In this order, each sure of more words than the next: a name that she gave to a place; the row that work has come to; how far she has come along a row; a phrase that names blocks by row and number; groups of rows,
 * columns and blocks; corners; the middle; two numbers; lines and what is picked from them. The longest wins; of equal length the first.
 */
const BLOCK_FINDERS: Finder[] = [
  namedPlace,
  lineSpoken,
  alongRow,
  shortCross,
  rowFirst,
  columnFirst,
  blockFirst,
  downAndAcross,
  ordinalFirst,
  betweenBlocks,
  countedGroup,
  countedAlong,
  everyBlock,
  sideColumn,
  CORNER_RULES.corners,
  CORNER_RULES.cornerOrSide,
  cornerPhrase,
  middleBlock,
  pair,
  commaPairs,
  linePhrase,
  linesBeside,
  lineReached,
  inOtherRow,
];

/** In this order: what lies beside a place told or spoken of; one of several; what points back. The longest wins. */
const POINTER_FINDERS: Finder[] = [
  sideLike,
  (t, k, c) => neighbourPhrase(t, k, c, (m) => findBlocks(t, m, c) ?? blockOfCloth(t, m, c)),
  (t, k, c) => neighbour(t, k, c, (m) => findBlocks(t, m, c) ?? blockOfCloth(t, m, c)),
  (t, k, c) => allBut(t, k, c, (m) => findBlocks(t, m, c)),
  oneOfThem,
  contrasted,
  pickedOfLine,
  thatSide,
  backPointer,
  restOfLines,
  lineAfterLine,
  sidesAgain,
];

const mayBegin = (kind: keyof typeof PLACE_HEADS, token: Token | undefined): boolean =>
  token !== undefined && (token.kind === 'number' || PLACE_HEADS[kind].has(token.w));

function longest(finders: Finder[], tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let best: PlaceFound | undefined;
  for (const find of finders) {
    const found = find(tokens, i, ctx);
    if (found && (!best || found.next > best.next)) best = found;
  }
  return best;
}

/** Blocks named at token `i`. */
export const findBlocks: Finder = (tokens, i, ctx) => {
  // names that this quilt's places were given can begin with any word
  if (!tokens[i] || !(ctx.grid.placeNames || mayBegin('blocks', tokens[i]))) return undefined;
  const found = longest(BLOCK_FINDERS, tokens, i, ctx);
  // "the last row of quilting", "two rows of stitching": rows of stitches
  if (
    found &&
    /^rows?$/.test(tokens[found.next - 1]?.w ?? '') &&
    tokens[found.next]?.w === 'of' &&
    /^(quilting|stitching|stitches|ties|knots|running|backstitch|hand|machine|it)$/.test(
      tokens[found.next + 1]?.w ?? '',
    )
  )
    return undefined;
  return found;
};
/** A side of the border, of the edge or of the binding at token `i`. */
export const findPart: Finder = (tokens, i, ctx) =>
  mayBegin('part', tokens[i]) ? sidedPart(tokens, i, ctx) : undefined;
/** "mildewed from one end to the other", "from one side to the other side": all along it, and no second thing. */
const endsTheWay = (tokens: Token[], i: number): boolean =>
  (tokens[i]!.w === 'the' || tokens[i]!.w === 'other') &&
  /\bfrom (?:the )?one (?:\S+ )?(?:clear |right |clean )?(?:across |over |through )?to (?:the )?$/.test(
    tokens
      .slice(Math.max(0, i - 7), i)
      .map((t) => `${t.w} `)
      .join(''),
  );

/** A word that points back to places spoken of before. */
export const findPointer: Finder = (tokens, i, ctx) => {
  if (endsTheWay(tokens, i)) return undefined;
  const found = mayBegin('pointer', tokens[i])
    ? longest(POINTER_FINDERS, tokens, i, ctx)
    : contrastedBare(tokens, i, ctx);
  return found && reachedAlong(tokens, found, ctx);
};

/** All finders by the kind of phrase that they find. */
export const PLACE_FINDERS: Readonly<Record<keyof typeof PLACE_HEADS, Finder[]>> = {
  blocks: BLOCK_FINDERS,
  part: [sidedPart],
  pointer: POINTER_FINDERS,
};
