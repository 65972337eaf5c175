import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { fromRowAndBlocks, rowAfterBlock } from './block-first.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { BLOCKS, focusRow } from './place-tokens.ts';

/**
 * The seam between two blocks that lie side by side, the second told without its noun: "between the fifth block and the sixth",
 * "between the third block of row two and the fourth", "(the one) between three and four", of the row spoken of. What lies between two
 * that have another between them is that other one, and left to the rules for neighbours.
 */
export function betweenBlocks(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const the = w(tokens, i - 1) === 'the';
  const before = the ? i - 2 : i - 1;
  if (w(tokens, before) !== 'between') return undefined;
  const first = oneAt(tokens, i);
  if (!first) return undefined;
  const row = rowAfterBlock(tokens, first.next, ctx);
  const joint = row?.next ?? first.next;
  if (!/^(and|&|\+)$/.test(w(tokens, joint))) return undefined;
  const last = oneAt(tokens, w(tokens, joint + 1) === 'the' ? joint + 2 : joint + 1);
  if (!last || Math.abs(last.value - first.value) !== 1) return undefined;
  // "between three and four" may be a time or a length where no seam is spoken of
  const said = first.noun || last.noun || row;
  if (!said && !/^(one|seam|ones|seams|join)$/.test(w(tokens, before - 1))) return undefined;
  const behind = row ? undefined : rowAfterBlock(tokens, last.next, ctx);
  const value = (row ?? behind)?.value ?? focusRow(ctx);
  if (value === undefined) return undefined;
  return fromRowAndBlocks(
    ctx.grid,
    value,
    [first.value, last.value],
    behind?.next ?? last.next,
    row || behind ? 'said' : 'implied',
    'place.between-blocks',
  );
}

/** "the fifth block", "the sixth", "block three", "three". */
function oneAt(tokens: Token[], i: number): { value: number; next: number; noun: boolean } | undefined {
  const led = BLOCKS.has(w(tokens, i));
  const ordinal = led ? undefined : readOrdinal(tokens, i);
  const n = ordinal ?? readCount(tokens, led ? i + 1 : i);
  if (
    !n ||
    !/^(|and|&|\+|of|in|on|along|is|'s|has|have|are|came|come|gave|open|opened|split|gone|too|as|where|also|[.,;:!?()\n]|blocks?|one|square)$/.test(
      w(tokens, n.next),
    )
  )
    return undefined;
  // "the sixth one"; but "between six one and seven one" names two blocks
  const one = w(tokens, n.next) === 'one';
  if (one && !ordinal) return undefined;
  const noun = !led && (one || BLOCKS.has(w(tokens, n.next)));
  return { value: n.value, next: noun ? n.next + 1 : n.next, noun: led || noun };
}
