import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { choicesAt, chosen } from '../line/choices-at.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { pointingTo } from './pointing-to.ts';

/**
 * "(row three is faded,) the middle one is torn", "the two end ones", "the first and last of it", "the block at the end of it", "the top two
 * of that": blocks of the one whole row or column that was spoken of, where neither is named again.
 */
export function pickedOfLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  // "row two without the end blocks": what is excepted is read with its line
  if (w(tokens, i) !== 'the' || EXCEPTED.test(w(tokens, i - 1))) return undefined;
  const line = wholeLines(ctx.grid, ctx.focus);
  if (line?.lines.length !== 1 || ctx.cloth) return undefined;
  const total = ctx.focus.length;
  const counting = line.axis === 'row' ? 'across' : 'down';
  const last = blockAtEnd(tokens, i + 1);
  if (last) return pointingTo(last, [ctx.focus.at(-1)!], 'place.picked-of-line');
  const choices = choicesAt(tokens, i + 1);
  const picked = choices && chosen(choices.list, total, counting);
  if (!choices || !picked?.length || picked.some((k) => k < 1 || k > total)) return undefined;
  let next = choices.next;
  const one = /^ones?$/.test(w(tokens, next));
  // "the middle one" is read as a middle of one
  const noun = one || w(tokens, next - 1) === 'one' || BLOCK_NOUNS.has(w(tokens, next));
  if (one || BLOCK_NOUNS.has(w(tokens, next))) next++;
  const of = ofIt(tokens, next);
  // "the first one" may be what comes next in the talk, "the middle block" that of the quilt
  const word = w(tokens, i + 1);
  const clear =
    /^(end|outer|outside|two)$/.test(word) ||
    (/^(middle|centre|center)$/.test(word) && w(tokens, next - 1) === 'one');
  if (!of && !(noun && clear)) return undefined;
  if (!of && /^(of|in|on|along|from|row|column|corner|border|edge|side)$/.test(w(tokens, next)))
    return undefined;
  return pointingTo(
    of ?? next,
    picked.map((k) => ctx.focus[k - 1]!),
    'place.picked-of-line',
  );
}

const EXCEPTED = /^(without|but|bar|barring|except|excepting|for|from|not|minus|less|save|than)$/;

/** "of it", "of that", "of that one": the index behind them. */
function ofIt(tokens: Token[], k: number): number | undefined {
  if (w(tokens, k) !== 'of' || !/^(it|that|this|them)$/.test(w(tokens, k + 1))) return undefined;
  return w(tokens, k + 2) === 'one' ? k + 3 : k + 2;
}

/** "(the) block at the end of it", "one at the very end": the index behind them. */
function blockAtEnd(tokens: Token[], k: number): number | undefined {
  if (!(w(tokens, k) === 'one' || BLOCK_NOUNS.has(w(tokens, k)))) return undefined;
  if (w(tokens, k + 1) !== 'at' || w(tokens, k + 2) !== 'the') return undefined;
  const end = /^(very|far)$/.test(w(tokens, k + 3)) ? k + 4 : k + 3;
  if (w(tokens, end) !== 'end') return undefined;
  return w(tokens, end + 1) === 'of' ? ofIt(tokens, end + 1) : end + 1;
}
