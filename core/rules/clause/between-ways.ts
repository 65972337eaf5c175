import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { wordsBetween } from '../words-between.ts';

const UNDECIDED =
  /(?:(?:ca n't|can not|cannot|could n't|not|n't|trouble|struggling to|trying to|have to|got to|need to) (?:\w+ )?(?:decide|choose|pick|settle)|torn|undecided|wavering|dithering|hesitating|toss up|choice is|choosing|deciding) between $/;
const FASTENED =
  /^(?:sewn|stitched|laid|put|set|slipped|fused|tacked|basted|spread|stretched|applied|couched|patched)$/;
const LIES = /^(?:behind|over|under|underneath|beneath|across|on)$/;
const SUBJECT = /^(?:i|we|she|he|they|'ve|have|has|had|is|was|were|are|'s|and|,)$/;

/**
 * "can't decide between crepeline over the top and a piece of lawn sewn in behind": how it would be put there, and nothing that was done.
 * The tokens without that word.
 */
export function withBetweenWays(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, k) => t.w === 'between' && UNDECIDED.test(wordsBetween(tokens, k - 6, k + 1)),
  );
  if (at < 0) return tokens;
  const out = tokens.slice(0, at + 1);
  let k = at + 1;
  for (; k < tokens.length && !/^[.;!?\n]$/.test(w(tokens, k)); k++) {
    if (w(tokens, k) === 'i' || w(tokens, k) === 'we') break;
    const lies = /^(?:in|down)$/.test(w(tokens, k + 1)) ? k + 2 : k + 1;
    if (FASTENED.test(w(tokens, k)) && LIES.test(w(tokens, lies)) && !SUBJECT.test(w(tokens, k - 1))) {
      k = lies - 1;
      continue;
    }
    out.push(tokens[k]!);
  }
  return [...out, ...tokens.slice(k)];
}
