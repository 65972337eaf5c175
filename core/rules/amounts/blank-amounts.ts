import { LENGTH_UNIT_SET, UNIT_WORDS } from '../../lexicon/units.ts';
import type { Token } from '../../text/tokenise.ts';

const BLANK = /^[?_…]$/;
/** "border __ in": of a measure, where "in" could be nothing but inches. */
const MEASURED =
  /^(?:border|width|length|wide|long|seam|strips?|block|overhang|tails?|diagonal|by|x|×|:|=|,)$/;

/**
 * "?? cm of net", "border __ cm", "used _ skeins": a gap left for a number that she did not have. The marks become one word,
 * "many", that a unit with no number behind it is known by; so neither is the sentence cut at them, nor one unit taken for said.
 */
export function nameBlanks(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.kind === 'mark' && BLANK.test(t.w))) return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    let next = i;
    while (tokens[next]?.kind === 'mark' && BLANK.test(tokens[next]!.w)) next++;
    if (next > i && awaitsNumber(tokens, i, next)) {
      out.push({ ...t, w: 'many', kind: 'word', to: tokens[next - 1]!.to });
      i = next - 1;
    } else out.push(t);
  }
  return out;
}

/** Does the unit that the marks stand before need a number, in the midst of a sentence? */
function awaitsNumber(tokens: Token[], from: number, next: number): boolean {
  const unit = tokens[next]?.w ?? '';
  const before = tokens[from - 1];
  // "is that right? pins are short": a mark right behind its word asks
  if (!before || tokens[from]!.glued || !Object.hasOwn(UNIT_WORDS, unit)) return false;
  if (/^(?:in|m|y|g|length|lengths|square|squares|card|cards|box|boxes|")$/.test(unit))
    return LENGTH_UNIT_SET.has(UNIT_WORDS[unit]!) && MEASURED.test(before.w);
  return true;
}
