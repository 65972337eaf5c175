import type { Token } from '../../text/tokenise.ts';
import { wordsOf } from '../../text/words-of.ts';
import { wordsBetween } from '../words-between.ts';

const STUFF = /^(?:something|summat|somethin)$/;
const KNOWN = /^(?:interfacing|fusible|iron-on|vilene)$/;
const STUCK = /^(?:fused|ironed|bonded|glued|stuck|pressed)$/;
const BEHIND =
  /^(?:(?:on|in|down|onto|on to|to) )*(?:behind|underneath|(?:the )?(?:back|reverse|wrong side)(?: of)?)$/;
const HAS = /^(?:has|had|have|'s|'d|'ve|got|there|is|was|were|been|somebody|someone|they|people|with)$/;

/**
 * "there's something fused on behind 2-2", "somebody had something ironed on behind that": how it was found, and no work of today. What is fused on
 * behind is interfacing, whatever she calls it. Read as "there's interfacing behind …".
 */
export function withFusedBehind(tokens: Token[]): Token[] {
  const k = tokens.findIndex(
    (t, n) =>
      STUFF.test(t.w) ||
      (KNOWN.test(t.w) && /^(?:'s|is|was)$/.test(tokens[n - 1]?.w ?? '') && tokens[n - 2]?.w === 'there'),
  );
  if (k < 0) return tokens;
  let m = k + 1;
  while (/^(?:that|has|'s|is|was|had|been|all)$/.test(tokens[m]?.w ?? '') && m < k + 4) m++;
  if (!STUCK.test(tokens[m]?.w ?? '')) return tokens;
  let to = 0;
  for (let n = m + 2; n <= m + 6 && n <= tokens.length; n++)
    if (BEHIND.test(wordsOf(tokens.slice(m + 1, n)))) to = n;
  if (!to) return tokens;
  let from = k;
  while (from > 0 && HAS.test(tokens[from - 1]!.w)) from--;
  const at = tokens[k]!;
  // "4-4: something fused in behind", in a list of what was done: work, where nothing says that it was there or came off
  const found = tokens
    .slice(from, k)
    .some((t) => /^(?:there|had|somebody|someone|they|with|been)$/.test(t.w));
  if (!found && !/ (?:been|off|away|out) /.test(wordsBetween(tokens, k, to + 8))) return tokens;
  // "I've had something fused on behind", of one who did it for her, is work all the same
  if (/^(?:i|we|you)$/.test(tokens[from - 1]?.w ?? '')) return tokens;
  const said = ['there', "'s", 'interfacing', 'behind'].map(
    (w): Token => ({ ...at, w, kind: 'word', to: tokens[to - 1]!.to }),
  );
  return [...tokens.slice(0, from), ...said, ...tokens.slice(to)];
}
