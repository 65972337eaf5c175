import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { wordsBetween } from '../words-between.ts';

/** Ways that may be settled; an estimate or a date that is approved is another matter. */
const WAY =
  /^(?:net|netting|tulle|crepeline|overlay|silk|muslin|lawn|calico|cotton|support|backing|patch|patching|patches|darn|darning|lining|interfacing|couching|wash|washing|cleaning|replacement|piece|tying|quilting|stitching|overlaying)$/;
const SETTLED =
  /^ (?:(?:has|have|had|'s|'ve|'d|now|since|both) ){0,3}(approved(?! of)|okayed|ok 'd|accepted|agreed (?:to|on)|signed off(?: on)?|said yes to|chosen|chose|picked|gone for|went for|gone with|went with|opted for|plumped for|settled on|decided on|decided for) /;
/** Only said of what another proposed: one of them alone settles it too. */
const ASSENT = /^(?:approved|okayed|ok|accepted|agreed|signed|said)/;
const REFUSED =
  /^ (?:(?:has|have|had|'s|'ve|'d|now|since|also) ){0,3}(rejected|turned down|vetoed|refused|ruled out|said no to|dismissed|decided against|declined|dropped|thrown out|threw out) /;
const PLAIN = /^(?:rejected|vetoed|dropped)$/;
const WHO =
  /^(?:she|he|they|we|i|curator|client|owner|customer|family|daughter|son|niece|nephew|lady|committee|museum|trust|vicar|conservator|registrar|director|trustees|owners|couple|church|lender)$/;

/**
 * "the curator has approved the silk support and rejected the net", "she's agreed to the patch but turned down the wash": two verdicts of one
 * subject. The tokens as if "go with the silk support, not the net" had been said.
 */
export function withApprovedAndRejected(tokens: Token[]): Token[] {
  for (let k = 1; k < tokens.length - 2; k++) {
    if (!WHO.test(w(tokens, k - 1))) continue;
    const yes = SETTLED.exec(wordsBetween(tokens, k, k + 7));
    // "I've decided against washing it" is known as it is
    const own = /^(?:i|we)$/.test(w(tokens, k - 1));
    const no = yes || own ? null : REFUSED.exec(wordsBetween(tokens, k, k + 6));
    const verdict = yes ?? no;
    if (!verdict) continue;
    const from = k + verdict[0].trim().split(' ').length;
    const end = endOfWay(tokens, from);
    if (!end) continue;
    let start = k - 1;
    while (start > 0 && /^(?:the|my|our|her|his|their)$/.test(w(tokens, start - 1))) start--;
    const before = tokens.slice(0, start);
    const verb = tokens[from - 1]!;
    const say = (...words: string[]): Token[] => words.map((word) => ({ ...verb, w: word, kind: 'word' }));
    if (no) {
      if (PLAIN.test(no[1]!)) return tokens;
      return [...tokens.slice(0, k), ...say('rejected'), ...tokens.slice(from)];
    }
    // "… and rejected the net"
    let next = end;
    while (/^(?:,|and|but|&|then)$/.test(w(tokens, next)) && next < end + 3) next++;
    while (next > end && WHO.test(w(tokens, next))) next++;
    const other = next > end ? REFUSED.exec(wordsBetween(tokens, next, next + 6)) : null;
    const behind = other ? next + other[0].trim().split(' ').length : 0;
    const last = other ? endOfWay(tokens, behind) : undefined;
    if (last)
      return [
        ...before,
        ...say('go', 'with'),
        ...tokens.slice(from, end),
        { ...verb, w: ',', kind: 'mark' },
        ...say('not'),
        ...tokens.slice(behind),
      ];
    return ASSENT.test(yes![1]!) ? [...before, ...say('go', 'with'), ...tokens.slice(from)] : tokens;
  }
  return tokens;
}

/** The index behind "the silk support", "a patch on 3-4": a way in a few words, with nothing told of it. */
function endOfWay(tokens: Token[], from: number): number | undefined {
  let m = from;
  let named = false;
  while (m < from + 11 && m < tokens.length && !ENDS.test(w(tokens, m))) {
    named ||= m < from + 6 && WAY.test(w(tokens, m));
    m++;
  }
  return named && w(tokens, m) !== 'from' ? m : undefined;
}
const ENDS = /^(?:[.,;:!?\n]|and|but|&|because|as|so|from|if|when|since|once)$/;
