import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockAt, blocksOfLine, unique } from '../grid.ts';
import { linesSpokenAt } from '../line-spoken.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { type Line, lengthOf } from './axis-of.ts';
import { lineAt } from './line-at.ts';
import { pickAt } from './pick-at.ts';

function crossed(ctx: PlaceContext, line: Line, along: number[], next: number): PlaceFound {
  const named = line.lines.flatMap((k) =>
    along.map((b) => (line.axis === 'row' ? blockAt(ctx.grid, k, b) : blockAt(ctx.grid, b, k))),
  );
  const inside = named.filter((p): p is string => p !== undefined);
  return {
    next,
    places: unique(inside),
    how: line.how,
    rule: 'place.of-line',
    kind: 'blocks',
    ...(inside.length < named.length || !named.length ? { outside: true } : {}),
  };
}

/**
 * Places told as lines of the grid and what is picked from them: "the fourth block down in the third column", "row five,
 * second from the right", "the bottom two in column four". A line is a row or a column or several of one kind; a pick is
 * which of its blocks are meant. Either may be said first, and lines may stand alone.
 */
export function linePhrase(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const line = lineAt(tokens, i, ctx);
  // the article stays a word of its own, but for "the row" that points back
  if (line) return w(tokens, i) === 'the' && line.how === 'said' ? undefined : afterLine(tokens, line, ctx);
  const pick = w(tokens, i) === 'the' ? undefined : pickAt(tokens, i, ctx, false);
  if (!pick) return undefined;
  let j = pick.next;
  while (/^(of|in|on|along|at|from|,|down|across|up|over)$/.test(w(tokens, j)) && j < pick.next + 2) j++;
  if (j === pick.next && !pick.noun) return undefined;
  if (j === pick.next + 1 && w(tokens, pick.next) === ',' && !pick.noun) return undefined;
  const of = lineAt(tokens, j, ctx) ?? lineToldAsOne(tokens, j, ctx);
  // "the third block, row two": the comma joins it; "the last block. Row two" does not
  if (!of) return undefined;
  if (j === pick.next && !of.named) return undefined;
  const along = pick.of(lengthOf(ctx, of), of.axis);
  return along ? crossed(ctx, of, along, of.next) : undefined;
}

/** "the first three of the next", "the last two of that one": of the rows that the talk goes along. */
function lineToldAsOne(tokens: Token[], j: number, ctx: PlaceContext): Line | undefined {
  if (w(tokens, j - 1) !== 'of') return undefined;
  const told = linesSpokenAt(tokens, j, ctx, true);
  return told && { ...told, how: 'implied', named: true };
}

function afterLine(tokens: Token[], line: Line, ctx: PlaceContext): PlaceFound | undefined {
  const across = lengthOf(ctx, line);
  let j = line.next;
  while (
    /^(,|:|\/|\(|x|in|at|now|where|it|meets|crosses|is|right)$/.test(w(tokens, j)) &&
    j < line.next + 3
  ) {
    if (/^(is|right|it)$/.test(w(tokens, j)) && !/^(where|is)$/.test(w(tokens, j - 1))) break;
    j++;
  }
  const meeting = /^(meets|crosses)$/.test(w(tokens, j - 1));
  const comma = w(tokens, j - 1) === ',' && j > line.next;
  const other = lineAt(tokens, j, ctx);
  if (
    other &&
    other.axis !== line.axis &&
    (meeting || line.named || other.named || j === line.next) &&
    other.how === 'said'
  )
    return crossed(ctx, line, other.lines, other.next);
  const pick = meeting ? undefined : pickAt(tokens, j, ctx, true);
  // "row two, two inches in", "row two, the last two to do": a count alone must touch the line or end its phrase
  if (
    pick &&
    (pick.noun ||
      !comma ||
      /^(|,|\.|;|and|&|is|are|was|were|has|have|need|needs|got)$/.test(w(tokens, pick.next)))
  ) {
    // "row two, block three, row four": several rows take a pick only from a noun
    const along = line.lines.length > 1 && !pick.noun ? undefined : pick.of(across, line.axis);
    // "second from the left in row five": the pick belongs to the row that follows it
    const k = pick.next;
    const next = /^(of|in|on)$/.test(w(tokens, k)) ? lineAt(tokens, k + 1, ctx) : undefined;
    if (along && !next) return crossed(ctx, line, along, pick.next);
  }
  // "that row" alone is read as what points back
  if (line.how === 'implied' && !line.named) return undefined;
  const places = unique(line.lines.flatMap((k) => blocksOfLine(ctx.grid, line.axis, k)));
  return places.length
    ? {
        next: line.next,
        places,
        how: line.how,
        rule: line.half ? 'place.half' : line.axis === 'row' ? 'place.counted-rows' : 'place.counted-columns',
        kind: 'blocks',
      }
    : undefined;
}
