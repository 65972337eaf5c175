import type { Token } from '../text/tokenise.ts';
import { wordSet } from '../text/word-set.ts';
import { LEXICON, type Sense } from './lexicon-index.ts';

/** How much it is so; between the words of a phrase they change nothing. */
const DEGREES = wordSet(
  'slightly rather quite very really pretty fairly completely totally terribly awfully somewhat proper properly partly mostly horribly distinctly seriously',
);
/** "a bit", "a little", "a touch", "kind of", "sort of". */
const AMOUNTS = wordSet('bit little touch tad');
const WORDS_AHEAD = 6;

/** How many words of degree stand at `j`. */
function degreesAt(tokens: readonly Token[], j: number): number {
  const word = tokens[j]?.w ?? '';
  if (DEGREES.has(word)) return 1;
  const next = tokens[j + 1]?.w ?? '';
  if (word === 'a' && AMOUNTS.has(next)) return 2;
  return /^(sort|kind)$/.test(word) && next === 'of' ? 2 : 0;
}

/**
 * "gone a bit yellow", "come rather loose", "in pretty good nick": a phrase for what is found, told with how much it is so between its
 * words. `words` is the phrase alone.
 */
export function hedgedPhraseAt(
  tokens: readonly Token[],
  i: number,
): { payloads: Sense[]; next: number; words: string } | undefined {
  let first = i + 1;
  let hedged = degreesAt(tokens, first);
  if (!hedged) {
    first++;
    hedged = degreesAt(tokens, first);
  }
  if (!hedged) return undefined;
  const kept: Token[] = tokens.slice(i, first);
  const ends = kept.map((_, k) => i + k + 1);
  for (let j = first; j < tokens.length && kept.length < WORDS_AHEAD; ) {
    const skip = degreesAt(tokens, j);
    if (skip) {
      j += skip;
      continue;
    }
    kept.push(tokens[j]!);
    ends.push(++j);
  }
  const hit = LEXICON.longestAt(kept, 0);
  if (!hit || hit.next <= first - i || !hit.payloads.some((s) => s.k === 'finding' || s.k === 'fail'))
    return undefined;
  return {
    payloads: hit.payloads,
    next: ends[hit.next - 1]!,
    words: kept
      .slice(0, hit.next)
      .map((t) => t.w)
      .join(' '),
  };
}
