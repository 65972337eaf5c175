import type { Action } from '../../../../shared/vocabulary.ts';
import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { LEXICON } from '../../lexicon-index.ts';
import { allBlocks, columnOf, rowOf, splitBlock, unique } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingTo } from './pointing-to.ts';

/** "the rest of that row", "the rest along it", "the rest of this column": the blocks of the line that were not just told. */
export function restOfLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid, focus } = ctx;
  if (!/^(of|along)$/.test(w(tokens, i + 2))) return undefined;
  // "the rest of that same row"
  let k = /^(the|that|it|this|its)$/.test(w(tokens, i + 3)) ? i + 4 : i + 3;
  if (w(tokens, k) === 'same') k++;
  const row = splitBlock(focus.at(-1) ?? '')?.row;
  const away = restOfNamed(tokens, k, ctx);
  if (away) return away;
  // "the first two of row three", then "the rest of that one"
  const one =
    w(tokens, k) === 'one' &&
    /^(that|this)$/.test(w(tokens, k - 1)) &&
    focus.length > 1 &&
    focus.every((p) => splitBlock(p)?.row === row);
  const isRow = w(tokens, k) === 'row' || w(tokens, i + 3) === 'it' || one;
  if (row !== undefined && isRow) {
    const named = w(tokens, k) === 'row' ? readCount(tokens, k + 1) : undefined;
    const which = named?.value ?? row;
    return pointingTo(
      named ? named.next : /^(row|one)$/.test(w(tokens, k)) ? k + 1 : i + 4,
      rowOf(grid, which).filter((p) => !focus.includes(p)),
      'place.rest-of-row',
    );
  }
  if (row !== undefined && (w(tokens, k) === 'column' || w(tokens, k) === 'col')) {
    const column = splitBlock(focus.at(-1)!)!.block;
    return pointingTo(
      k + 1,
      columnOf(grid, column).filter((p) => !focus.includes(p)),
      'place.rest-of-column',
    );
  }
  return undefined;
}

/**
 * "the mustard crepe's tender. Rest of row one, sound", "1-6 torn, 4-4 faded, the rest of row one's fine": the row or column is named and
 * not the one spoken of last: what was told of in it before, by its name or by its cloth, is no part of the rest.
 */
function restOfNamed(
  tokens: Token[],
  k: number,
  { grid, focus, cloth, earlier }: PlaceContext,
): PlaceFound | undefined {
  const axis = /^(row|column|col)$/.exec(w(tokens, k))?.[1];
  const named = axis ? readCount(tokens, k + 1) : undefined;
  if (!named) return undefined;
  const line = axis === 'row' ? rowOf(grid, named.value) : columnOf(grid, named.value);
  if (focus.some((p) => line.includes(p))) return undefined;
  const told = [...(cloth ?? []), ...earlier.slice(-6).flat()].filter((p) => line.includes(p));
  const left = line.filter((p) => !told.includes(p));
  return told.length && left.length
    ? pointingTo(named.next, left, axis === 'row' ? 'place.rest-of-row' : 'place.rest-of-column')
    : undefined;
}

/** "the rest", "the rest of them", after one or some of a few blocks told together were spoken of: those that were not. */
export function restOfGroup(
  tokens: Token[],
  k: number,
  { focus, earlier, cloth, list }: PlaceContext,
): PlaceFound | undefined {
  const of = w(tokens, k) === 'of';
  if (of && !/^(them|those|these|'em|em)$/.test(w(tokens, k + 1))) return undefined;
  if (!of && /^(row|column|day|evening|time|stuff|bit|thread|cloth|fabric)$/.test(w(tokens, k)))
    return undefined;
  const group = [...(cloth ? [cloth] : []), ...(list ? [list] : []), ...[...earlier].reverse()].find(
    (g) => g.length > focus.length && g.length < 9 && focus.length > 0 && focus.every((p) => g.includes(p)),
  );
  if (!group?.every((p) => splitBlock(p)) || group.length < 3) return undefined;
  return pointingTo(
    of ? k + 2 : k,
    group.filter((p) => !focus.includes(p)),
    'place.the-other',
  );
}

/**
 * "everything else in row two is sound", "2-3 is torn, everything else in that row is fine", "2-3 and 4-1 need darning, everything else is
 * all right": what was not spoken of, of the line that is named or, where none is, of the top.
 */
export function everythingElse(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i) !== 'everything' || w(tokens, i + 1) !== 'else') return undefined;
  const groups = [...ctx.earlier.slice(-8), ctx.focus].filter((g) => g.some((p) => splitBlock(p)));
  // "row two: the third one's torn, everything else is fine"
  const heading = groups.findLastIndex((g, k) => k < groups.length - 1 && g.length > 3);
  const line = groups[heading];
  const within = line && groups.slice(heading + 1).every((g) => g.every((p) => line.includes(p)));
  const told = new Set((within ? groups.slice(heading + 1) : groups).flat());
  if (!told.size) return undefined;
  const rest = (next: number, places: string[]): PlaceFound | undefined => {
    const left = places.filter((p) => !told.has(p));
    return left.length && left.length < places.length
      ? pointingTo(next, left, 'place.everything-else')
      : undefined;
  };
  if (/^(in|on|of|along)$/.test(w(tokens, i + 2))) {
    const k = /^(the|that|this|its)$/.test(w(tokens, i + 3)) ? i + 4 : i + 3;
    const last = splitBlock(ctx.focus.at(-1) ?? '');
    const named = readCount(tokens, k + 1);
    if (w(tokens, k) === 'row' && (named || last))
      return rest(named?.next ?? k + 1, rowOf(ctx.grid, named?.value ?? last!.row));
    if (/^(column|col)$/.test(w(tokens, k)) && (named || last))
      return rest(named?.next ?? k + 1, columnOf(ctx.grid, named?.value ?? last!.block));
    return undefined;
  }
  // "everything else stands": said of the note
  if (!/^(is|'s|was|looks|seems|feels|has|ok|okay|fine|sound|good)$/.test(w(tokens, i + 2))) return undefined;
  const row = ctx.walk?.heads && !ctx.walk.pair ? rowOf(ctx.grid, ctx.walk.row) : undefined;
  return rest(i + 2, within ? line : (row ?? allBlocks(ctx.grid)));
}

/** "rest of it", "the rest of the quilt", after rows or many blocks were named: all the other blocks. */
export function restOfIt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const k = w(tokens, i) === 'the' ? i + 1 : i;
  if (!/^(rest|remainder)$/.test(w(tokens, k))) return undefined;
  // "the rest is tied", "rest quilted": without "of it" where the deed follows
  const deed = /^(is|'s|are|all|now|was|got)$/.test(w(tokens, k + 1)) ? w(tokens, k + 2) : w(tokens, k + 1);
  const waits = [2, 3, 4].some((n) => w(tokens, k + n) === 'wait');
  const next =
    (waits && /^(can|will|'ll|must|has|have|should|needs)$/.test(w(tokens, k + 1))) ||
    /^(tied|quilted|pressed|basted|done|finished|cleaned|vacuumed|tomorrow|tmrw|tmw|tonight|later|next|another|to|still|for)$/.test(
      deed,
    )
      ? k + 1
      : w(tokens, k + 1) !== 'of'
        ? undefined
        : w(tokens, k + 2) === 'it'
          ? k + 3
          : w(tokens, k + 2) === 'the' && w(tokens, k + 3) === 'quilt'
            ? k + 4
            : undefined;
  // "tied the rest", "quilted the rest by hand"
  const before = i === k ? undefined : deedAt(tokens, i - 1);
  const led = before && /^(|[.,;!]|and|by|in|with|too|as|now|today|tonight)$/.test(w(tokens, k + 1));
  if (!next && !led) return undefined;
  const action = led
    ? before
    : deedAt(tokens, next === k + 1 ? (deed === w(tokens, k + 1) ? k + 1 : k + 2) : -1);
  const had = action ? hadAlready(ctx, action) : [];
  const blocks = unique([...(led && had.length ? [] : ctx.focus), ...had].filter((p) => splitBlock(p)));
  if (
    blocks.length < rowOf(ctx.grid, splitBlock(blocks[0] ?? '')?.row ?? 1).length ||
    (!had.length && (led || blocks.length !== ctx.focus.length))
  )
    return undefined;
  const left = allBlocks(ctx.grid).filter((p) => !blocks.includes(p));
  return left.length ? pointingTo(next ?? k + 1, left, 'place.rest-of-it') : undefined;
}

/** The treatment that a word tells of. */
const deedAt = (tokens: Token[], k: number): Action | undefined =>
  (tokens[k] ? LEXICON.longestAt(tokens, k) : undefined)?.payloads.flatMap((s) =>
    s.k === 'action' && s.form === 'past' ? [s.v] : [],
  )[0];

/** "(tied rows 1-3; tied rows 4 and 5;) rest tied": the blocks that have had it before. */
const hadAlready = ({ mentions }: PlaceContext, action: Action): string[] =>
  (mentions ?? []).flatMap((m) =>
    m.action === action && (m.state === 'done' || m.state === 'doing')
      ? m.places.filter((p) => splitBlock(p))
      : [],
  );
