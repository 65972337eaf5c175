import { BLOCK_WORDS, COLUMN_WORDS, ROW_WORDS } from '../lexicon/place-words.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { wordAt as w } from '../text/word-at.ts';

const END = /^(first|last|top|bottom|left|right|upper|lower|middle|centre|center|outer)$/;
const NOUNS = new Set([...ROW_WORDS, ...COLUMN_WORDS, ...BLOCK_WORDS].filter((x) => x.length > 2));
const MARKER = /^(no|wait|sorry|rather|actually|nope)$/;
const AFTER_MARKER = /^(,|no|wait|sorry|just|only|the|actually|hang|on|that|'s|it|make|mean|i|meant|in|of)$/;

/**
 * A count of rows, columns or blocks said wrong and at once put right: "the top three no the top four blocks", "the middle two
 * columns no just the middle one", "the last three, no four, blocks". The tokens without what was said wrong.
 */
export function mendCounts(tokens: Token[]): Token[] {
  let out = tokens;
  for (let i = 2; i < out.length; i++) {
    if (!MARKER.test(out[i]!.w)) continue;
    out = mendedAt(out, i) ?? out;
  }
  return out;
}

function mendedAt(tokens: Token[], marker: number): Token[] | undefined {
  let b = w(tokens, marker - 1) === ',' ? marker - 2 : marker - 1;
  const noun = NOUNS.has(w(tokens, b)) ? tokens[b] : undefined;
  if (noun) b--;
  const count = readCount(tokens, b);
  const end = count && END.test(w(tokens, b - 1)) ? b - 1 : -1;
  if (end < 0) return undefined;
  let k = marker + 1;
  while (AFTER_MARKER.test(w(tokens, k)) && k < marker + 6) k++;
  const said = END.test(w(tokens, k)) ? k : -1;
  const number = said >= 0 ? said + 1 : k;
  const again = readCount(tokens, number);
  if (!again || again.value === count?.value) return undefined;
  const from = said >= 0 ? end : end + 1;
  const rest = said >= 0 ? said : number;
  let next = again.next;
  // "the last three, no four, blocks"
  if (w(tokens, next) === ',' && !noun && NOUNS.has(w(tokens, next + 1))) next++;
  if (NOUNS.has(w(tokens, next)) || (!noun && w(tokens, next) === 'ones'))
    return [...tokens.slice(0, from), ...tokens.slice(rest, again.next), ...tokens.slice(next)];
  if (!noun) return undefined;
  // "the middle two columns no just the middle one": the noun was said before
  const one = again.value === 1;
  return [
    ...tokens.slice(0, from),
    ...tokens.slice(rest, one ? number : again.next),
    { ...tokens[again.next - 1]!, kind: 'word', w: one ? noun.w.replace(/s$/, '') : noun.w, glued: false },
    ...tokens.slice(again.next),
  ];
}
