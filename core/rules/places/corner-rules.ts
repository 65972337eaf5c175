import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { fromRowAndBlocks, rowAfterBlock } from './block-first.ts';
import { blockAt, cornerBlock, cornerBlocks, gridOfRow } from './grid.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCKS } from './place-tokens.ts';

const MIDDLE = /^(middle|centre|center|central|mid)$/;

/** The four blocks round the middle point, where rows and columns are even. */
function middleFour(grid: QuiltGrid): string[] | undefined {
  const rows = grid.rows % 2 ? [] : [grid.rows / 2, grid.rows / 2 + 1];
  const places = rows.flatMap((r) => {
    const { blocks } = gridOfRow(grid, r);
    return blocks % 2 ? [] : [blockAt(grid, r, blocks / 2), blockAt(grid, r, blocks / 2 + 1)];
  });
  const inside = places.filter((p): p is string => p !== undefined);
  return inside.length === 4 ? inside : undefined;
}

/** "the four blocks at the center", "the four in the middle". */
function fourInTheMiddle(tokens: Token[], i: number, grid: QuiltGrid): PlaceFound | undefined {
  const k = BLOCKS.has(w(tokens, i + 1)) || w(tokens, i + 1) === 'ones' ? i + 2 : i + 1;
  if (!/^(at|in|round|around)$/.test(w(tokens, k)) || w(tokens, k + 1) !== 'the') return undefined;
  const at = /^(very|dead)$/.test(w(tokens, k + 2)) ? k + 3 : k + 2;
  if (!MIDDLE.test(w(tokens, at)) || /^(of|row|column|two|three)$/.test(w(tokens, at + 1))) return undefined;
  const places = middleFour(grid);
  return places && blocksSaid(at + 1, places, 'place.middle');
}

/** "the middle block", "the block in the centre", "dead centre". */
export function middleBlock(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const head = w(tokens, i);
  const { grid } = ctx;
  if (/^(four|4)$/.test(head)) return fourInTheMiddle(tokens, i, grid);
  if (!MIDDLE.test(head)) return undefined;
  const noun = w(tokens, i + 1);
  // "the centre four blocks" where rows and columns are even
  if (
    /^(four|4)$/.test(noun) &&
    (BLOCKS.has(w(tokens, i + 2)) ||
      w(tokens, i + 2) === 'ones' ||
      // "the middle four are all thin"
      (w(tokens, i - 1) === 'the' &&
        /^(|[,.;:]|are|have|need|want|all|every|got|to|is|being)$/.test(w(tokens, i + 2)))) &&
    !rowAfterBlock(tokens, i + 3, ctx)
  ) {
    const noun = BLOCKS.has(w(tokens, i + 2)) || w(tokens, i + 2) === 'ones';
    const places = middleFour(grid);
    if (places) return blocksSaid(noun ? i + 3 : i + 2, places, 'place.middle');
  }
  // "middle of row three", "the middle one in row two"
  let j = i + 1;
  if (noun === 'one' || BLOCKS.has(noun)) j++;
  if (['of', 'in'].includes(w(tokens, j))) {
    const row = rowAfterBlock(tokens, j, ctx);
    const length = row ? gridOfRow(grid, row.value).blocks : 0;
    if (row && length % 2)
      return fromRowAndBlocks(grid, row.value, [(length + 1) / 2], row.next, row.how, 'place.middle-of-row');
  }
  const across = gridOfRow(grid, (grid.rows + 1) / 2).blocks;
  const block =
    grid.rows % 2 && across % 2 ? blockAt(grid, (grid.rows + 1) / 2, (across + 1) / 2) : undefined;
  if (!block) return BLOCKS.has(noun) ? blocksSaid(i + 2, [], 'place.middle') : undefined;
  const before = w(tokens, i - 1);
  if (BLOCKS.has(noun) || noun === 'one') return blocksSaid(i + 2, [block], 'place.middle');
  if (/^(dead|exact|very)$/.test(before) && !BLOCKS.has(noun))
    return blocksSaid(i + 1, [block], 'place.middle');
  // "centre: patch or darn?", "middle is torn": a head without its article
  if (/^(|[.;\n])$/.test(before) && /^(:|-|--|is|'s|has|needs|wants)$/.test(noun))
    return blocksSaid(i + 1, [block], 'place.middle');
  if (before === 'the' && !['of', 'third', 'three', 'two', 'seam', 'row', 'column', 'out'].includes(noun))
    return blocksSaid(i + 1, [block], 'place.middle');
  return undefined;
}

export const CORNER_RULES = { corners, cornerOrSide };

export const VERTICAL = new Map<string, 'top' | 'bottom'>(
  Object.entries({
    top: 'top',
    upper: 'top',
    bottom: 'bottom',
    lower: 'bottom',
    btm: 'bottom',
  }),
);

export const ACROSS = new Map<string, 'left' | 'right'>(
  Object.entries({
    left: 'left',
    right: 'right',
    l: 'left',
    r: 'right',
    lh: 'left',
    rh: 'right',
  }),
);

/** "the four corner blocks", "all corners", "corner blocks". */
function corners(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  let j = i;
  // "every corner but the top left", "each corner block"
  const each = /^(every|each)$/.test(w(tokens, j));
  if (each || w(tokens, j) === 'all') j++;
  if (w(tokens, j) === 'the') j++;
  if (w(tokens, j) === 'four' || w(tokens, j) === '4') j++;
  const blocks = cornerBlocks(grid);
  const noun = w(tokens, j + 1);
  // "the corner ones", "every corner one"
  const named = BLOCKS.has(noun) || /^ones?$/.test(noun);
  if (w(tokens, j) === 'corner' && named && (each || noun.endsWith('s')))
    return blocksSaid(j + 2, blocks, 'place.corner-blocks');
  if (
    (w(tokens, j) === 'corners' || (each && w(tokens, j) === 'corner')) &&
    (j > i || /^(|,|\.|;|and|at|on|&)$/.test(w(tokens, i - 1)))
  )
    return {
      next: j + 1,
      places: ['corner-top-left', 'corner-top-right', 'corner-bottom-right', 'corner-bottom-left'],
      how: 'said',
      rule: 'place.corners',
      kind: 'part',
      soft: true,
    };
  return undefined;
}

/** "TL + TR corners", "TL, BL and BR blocks": how far behind `i` the word stands that these letters are of; 0 where none does. */
function namesCorners(tokens: Token[], i: number): number {
  let k = i;
  while (/^([tb][lr]|[,+&]|and)$/.test(w(tokens, k)) && k < i + 7) k++;
  const noun = w(tokens, k);
  return /^(corners|blocks|blks)$/.test(noun) ? k - i + 1 : 0;
}

/** "top left block", "bottom right-hand corner block", "top right corner", "upper left". */
function cornerOrSide(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  let j = i;
  // "TL corner", "BR block"
  const short = /^([tb])([lr])$/.exec(w(tokens, i));
  if (short && (/^(corner|block|blk)$/.test(w(tokens, i + 1)) || namesCorners(tokens, i + 1))) {
    const up = short[1] === 't';
    const toLeft = short[2] === 'l';
    const listed = !/^(corner|block|blk)$/.test(w(tokens, i + 1));
    if (listed && BLOCKS.has(w(tokens, i + namesCorners(tokens, i + 1))))
      return blocksSaid(i + 1, [cornerBlock(grid, up, toLeft)], 'place.corner-block');
    if (
      listed ||
      w(tokens, i + 1) === 'corners' ||
      (w(tokens, i + 1) === 'corner' && !BLOCKS.has(w(tokens, i + 2)))
    )
      return {
        next: listed ? i + 1 : i + 2,
        places: [`corner-${up ? 'top' : 'bottom'}-${toLeft ? 'left' : 'right'}`],
        how: 'said',
        rule: 'place.corner',
        kind: 'part',
        soft: true,
      };
    return blocksSaid(
      w(tokens, i + 1) === 'corner' ? i + 3 : i + 2,
      [cornerBlock(grid, up, toLeft)],
      'place.corner-block',
    );
  }
  let vertical = VERTICAL.get(w(tokens, j));
  let across: 'left' | 'right' | undefined;
  if (vertical) {
    j++;
    if (w(tokens, j) === ',') return undefined;
    across = ACROSS.get(w(tokens, j));
    if (!across) return undefined;
    j++;
  } else {
    across = ACROSS.get(w(tokens, j));
    if (!across) return undefined;
    j++;
    if (w(tokens, j) === 'hand') j++;
    vertical = VERTICAL.get(w(tokens, j));
    if (!vertical) return undefined;
    j++;
  }
  if (w(tokens, j) === 'hand' || w(tokens, j) === 'most') j++;
  if (w(tokens, j) === 'side') j++;
  const asBlock: PlaceFound = blocksSaid(
    j + 1,
    [cornerBlock(grid, vertical === 'top', across === 'left')],
    'place.corner-block',
  );
  const asCorner: PlaceFound = {
    next: j,
    places: [`corner-${vertical}-${across}`],
    how: 'said',
    rule: 'place.corner',
    kind: 'part',
    soft: true,
  };
  if (w(tokens, j) === 'corner') {
    if (BLOCKS.has(w(tokens, j + 1))) return { ...asBlock, next: j + 2 };
    // "the block in the top right-hand corner"
    if (BLOCKS.has(w(tokens, i - 3)) && /^(in|at)$/.test(w(tokens, i - 2)) && w(tokens, i - 1) === 'the')
      return { ...asBlock, next: j + 1 };
    return { ...asCorner, next: j + 1 };
  }
  // "(re-sewed the bottom right corner;) same again on the top left one": a corner of the quilt was spoken of
  if (w(tokens, j) === 'one' && ctx.focus.length === 1 && ctx.focus.every((p) => p.startsWith('corner-')))
    return { ...asCorner, next: j + 1 };
  if (BLOCKS.has(w(tokens, j)) || w(tokens, j) === 'one') return asBlock;
  // "bottom right's ripped", "the dotted one top left is faded"
  if (
    /^('s|is|has|was|got|needs|wants|looks|gets|there)$/.test(w(tokens, j)) &&
    !/^(on|in|at|to|from|along)$/.test(w(tokens, i - 1) === 'the' ? w(tokens, i - 2) : w(tokens, i - 1))
  )
    return { ...asBlock, next: j };
  // "a hole at the bottom left", "up in the top left there's a bit missing"
  if (
    /^(|[,.;!?]|there|it)$/.test(w(tokens, j)) &&
    /^(in|at|near|on|to|towards?)$/.test(w(tokens, i - 2)) &&
    w(tokens, i - 1) === 'the'
  )
    return asCorner;
  // "top right and bottom left corners"
  for (let k = j; k < Math.min(j + 8, tokens.length); k++) {
    if (tokens[k]!.w === 'blocks' || tokens[k]!.w === 'squares') return { ...asBlock, next: j };
    if (tokens[k]!.w === 'corners' || tokens[k]!.w === 'corner') return asCorner;
    if (
      !VERTICAL.has(tokens[k]!.w) &&
      !ACROSS.has(tokens[k]!.w) &&
      !['and', '&', ',', 'the', 'hand'].includes(tokens[k]!.w)
    )
      break;
  }
  return undefined;
}
