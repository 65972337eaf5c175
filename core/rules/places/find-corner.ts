import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { wordsBetween } from '../words-between.ts';
import { ACROSS, VERTICAL } from './corner-rules.ts';
import { cornerBlock, unique } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { BLOCK_NOUNS } from './place-tokens.ts';

type Upright = 'top' | 'bottom';
type Side = 'left' | 'right';
const UPRIGHT = new Map<string, Upright>([...VERTICAL, ['head', 'top'], ['foot', 'bottom']]);
const SIDE = new Map<string, Side>([...ACROSS, ['lefthand', 'left'], ['righthand', 'right']]);

/**
 * Corners told with their words in any order: "the block at the top right", "corner block up top on the right", "bottom corner
 * on the left", "both top corners", "the corner, bottom left". A block where a block is named, else the quilt's own corner.
 */
export function cornerPhrase(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let j = i;
  let both = false;
  while (/^(both|two|2|the|pair|of)$/.test(w(tokens, j)) && j < i + 3) {
    if (/^(both|two|2|pair)$/.test(w(tokens, j))) both = true;
    j++;
  }
  // "worn at two corners, top left and bottom right"
  const listed = w(tokens, j) === 'corners' ? cornersListed(tokens, j + 1) : undefined;
  if (listed) return found(ctx, listed.ends, false, listed.next);
  if (j > i && !both) return undefined;
  const up = UPRIGHT.get(w(tokens, j));
  const side = SIDE.get(w(tokens, j));
  const label = up && j === i ? labelCorner(tokens, i, ctx) : undefined;
  if (label) return label;
  if (up || side) {
    // "bottom corners", "both left-hand corner blocks", "the top corner on the right"
    let k = j + 1;
    if (w(tokens, k) === 'hand') k++;
    // "the top two corner blocks"
    if (/^(two|2)$/.test(w(tokens, k))) k++;
    if (!/^corners?$/.test(w(tokens, k))) return undefined;
    const many = w(tokens, k) === 'corners';
    k++;
    const block = BLOCK_NOUNS.has(w(tokens, k));
    const plural = many || (block && /s$/.test(w(tokens, k)));
    if (block) k++;
    if (plural) {
      const ends: [Upright, Side][] = up
        ? [
            [up, 'left'],
            [up, 'right'],
          ]
        : [
            ['top', side!],
            ['bottom', side!],
          ];
      return found(ctx, ends, block, k);
    }
    const rest = directionsAt(tokens, k);
    if (!rest || rest.up || !rest.side || !up) return undefined;
    return found(ctx, [[up, rest.side]], block, rest.next);
  }
  if (j > i) return bothCorners(tokens, i, j, ctx);
  const noun = w(tokens, i);
  if (noun === 'corner' || BLOCK_NOUNS.has(noun)) {
    const named = noun === 'corner' && (BLOCK_NOUNS.has(w(tokens, i + 1)) || w(tokens, i + 1) === 'one');
    // "the block in the corner, bottom left"
    const block =
      noun !== 'corner' ||
      named ||
      (w(tokens, i - 1) === 'the' &&
        /^(?:in|at)$/.test(w(tokens, i - 2)) &&
        (BLOCK_NOUNS.has(w(tokens, i - 3)) || w(tokens, i - 3) === 'one'));
    const behind = named ? i + 2 : i + 1;
    // "corner blocks, top left and bottom right"
    const several = /s$/.test(w(tokens, behind - 1)) && cornersListed(tokens, behind);
    if (several) return found(ctx, several.ends, block, several.next);
    // "in the corner of the quilt, bottom right", "the block in the corner, top right"
    const at =
      noun === 'corner'
        ? behindOfQuilt(tokens, behind)
        : IN_CORNER.test([0, 1, 2].map((n) => w(tokens, behind + n)).join(' '))
          ? behind + 3
          : behind;
    const below = noun === 'corner' ? belowLeft(tokens, at) : undefined;
    if (below) return found(ctx, [below.end], block, below.next);
    const rest = directionsAt(tokens, at);
    if (!rest?.up || !rest.side || rest.next === at) return undefined;
    // "a block left, top of …" needs a word or a comma between, unless a corner was named
    if (noun !== 'corner' && !/^(at|in|on|,|up|down)$/.test(w(tokens, at))) return undefined;
    return found(ctx, [[rest.up, rest.side]], block, rest.next);
  }
  return undefined;
}

const IN_CORNER = /^(?:in|at) the corner$/;

/** "(corners) top left and bottom right", ", top left, bottom right": each corner by its two words. */
function cornersListed(tokens: Token[], i: number): { ends: [Upright, Side][]; next: number } | undefined {
  const ends: [Upright, Side][] = [];
  let next = i;
  for (let k = i; ; ) {
    while (/^(,|:|and|&|at|the|on|both)$/.test(w(tokens, k)) && k < next + 3) k++;
    const up = UPRIGHT.get(w(tokens, k));
    const side = SIDE.get(w(tokens, k + 1));
    if (!up || !side) break;
    ends.push([up, side]);
    k += w(tokens, k + 2) === 'hand' ? 3 : 2;
    next = k;
  }
  return ends.length > 1 ? { ends, next } : undefined;
}

/** "label on bottom left, whipstitched": where labels go is a corner of the quilt. */
function labelCorner(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const side = SIDE.get(w(tokens, i + 1));
  // "label by hand, bottom left of the back"
  const ofIt =
    w(tokens, i + 2) === 'of' &&
    /^(the|this|its)$/.test(w(tokens, i + 3)) &&
    /^(back|backing|quilt|cover|coverlet|reverse|top|front)$/.test(w(tokens, i + 4));
  if (
    !side ||
    (!ofIt &&
      !/^(|[,.;!]|by|in|with|w|tomorrow|tmrw|tonight|too|now|and|today|hand|whipped|whipstitched|whipst)$/.test(
        w(tokens, i + 2),
      ))
  )
    return undefined;
  return tokens.slice(Math.max(0, i - 5), i).some((t) => /^(label|labels|tag)$/.test(t.w))
    ? found(ctx, [[UPRIGHT.get(w(tokens, i))!, side]], false, ofIt ? i + 5 : i + 2)
    : undefined;
}

/** "both corner blocks of the top row", "worn up top, both corner blocks": the two at the top or the bottom, whichever was told. */
function bothCorners(tokens: Token[], i: number, j: number, ctx: PlaceContext): PlaceFound | undefined {
  if (!/^corners?$/.test(w(tokens, j))) return undefined;
  const block = BLOCK_NOUNS.has(w(tokens, j + 1));
  if (!block && w(tokens, j) !== 'corners') return undefined;
  const end = block ? j + 2 : j + 1;
  let k = end;
  while (/^(of|in|on|at|along|the|up|down)$/.test(w(tokens, k)) && k < end + 4) k++;
  const behind = k > end ? UPRIGHT.get(w(tokens, k)) : undefined;
  if (behind) {
    const next = /^(row|edge|end|side)$/.test(w(tokens, k + 1)) ? k + 2 : k + 1;
    return found(
      ctx,
      [
        [behind, 'left'],
        [behind, 'right'],
      ],
      block,
      next,
    );
  }
  const told = new Set(tokens.slice(Math.max(0, i - 12), i).flatMap((t) => UPRIGHT.get(t.w) ?? []));
  if (told.size !== 1) return undefined;
  const [up] = [...told] as [Upright];
  return found(
    ctx,
    [
      [up, 'left'],
      [up, 'right'],
    ],
    block,
    end,
  );
}

/** Behind "of the quilt", where that stands at `i`; else `i`. */
const behindOfQuilt = (tokens: Token[], i: number): number =>
  w(tokens, i) === 'of' &&
  /^(?:the|this|my)$/.test(w(tokens, i + 1)) &&
  /^(?:quilt|cover|coverlet|top|whole|thing|blanket)$/.test(w(tokens, i + 2))
    ? i + 3
    : i;

/** "(the corner block) below left", "(the corner) above on the right", "down left", "left below": what lies below and left of all. */
function belowLeft(tokens: Token[], i: number): { end: [Upright, Side]; next: number } | undefined {
  const said = /^ (?:(?:on|at|to) the )?(left|right)(?: hand)?(?: side)? (below|above|down|up) /.exec(
    wordsBetween(tokens, i, i + 7),
  );
  const turned =
    said ??
    /^ (?:down |up )?(below|above|down|up)(?: (?:on|at|to) the| at)? (left|right)(?: hand)?(?: side)? /.exec(
      wordsBetween(tokens, i, i + 7),
    );
  if (!turned) return undefined;
  const [side, up] = said ? [said[1], said[2]] : [turned[2], turned[1]];
  return {
    end: [/^(?:below|down)$/.test(up!) ? 'bottom' : 'top', side as Side],
    next: i + turned[0].trim().split(' ').length,
  };
}

/** "at the top right", "up top on the right", ", bottom left", "on the left at the bottom". */
function directionsAt(tokens: Token[], i: number): { up?: Upright; side?: Side; next: number } | undefined {
  let up: Upright | undefined;
  let side: Side | undefined;
  let next = i;
  for (let k = i; k < Math.min(i + 9, tokens.length); k++) {
    const word = w(tokens, k);
    const a = UPRIGHT.get(word);
    const b = SIDE.get(word);
    if (a && !up) up = a;
    else if (b && !side) side = b;
    else if (/^(hand|most|side|corner|end)$/.test(word) && next === k) {
      next = k + 1;
      continue;
    } else if (/^(at|in|on|the|to|up|down|way|,|very|over|of)$/.test(word)) continue;
    else break;
    next = k + 1;
    if (up && side && !/^(hand|side|corner|most|end)$/.test(w(tokens, k + 1))) break;
  }
  // "the block at the top right edge" is none
  if (
    /^(edge|border|column|row|block|half|of)$/.test(w(tokens, next)) &&
    !(w(tokens, next) === 'of' && /^(the|it|this)$/.test(w(tokens, next + 1)))
  )
    return undefined;
  return up || side ? { ...(up ? { up } : {}), ...(side ? { side } : {}), next } : undefined;
}

function found(ctx: PlaceContext, ends: [Upright, Side][], block: boolean, next: number): PlaceFound {
  const { grid } = ctx;
  return block
    ? {
        next,
        places: unique(ends.map(([u, s]) => cornerBlock(grid, u === 'top', s === 'left'))),
        how: 'said',
        rule: 'place.corner-block',
        kind: 'blocks',
      }
    : {
        next,
        places: ends.map(([u, s]) => `corner-${u}-${s}`),
        how: 'said',
        rule: 'place.corner',
        kind: 'part',
        soft: true,
      };
}
