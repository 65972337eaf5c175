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
  let out = mendedAmounts(tokens);
  for (let i = 2; i < out.length; i++) {
    if (!MARKER.test(out[i]!.w)) continue;
    out = mendedAt(out, i) ?? out;
  }
  return out;
}

/** The marks between a wrong amount and the right one. */
const CORRECTS =
  /^(?:, )?(?:(?:no|sorry|wait|actually|rather|or rather|make that|make it|i mean|i meant|er|um|that 's|it 's)(?: ,)? )+$/;
const UNIT =
  /^(?:yards?|yds?|metres?|meters?|inch|inches|cm|spools?|reels?|skeins?|balls?|packs?|packets?|rolls?|fat|feet|ft)$/;

/** "two, make that four, skeins of floss", "three, no, four yards": the amount before its unit, put right at once. */
function mendedAmounts(tokens: Token[]): Token[] {
  for (let i = 0; i + 3 < tokens.length; i++) {
    const wrong = readCount(tokens, i);
    if (!wrong) continue;
    for (let k = wrong.next + 1; k < wrong.next + 6 && k < tokens.length; k++) {
      const right = readCount(tokens, k);
      if (!right) continue;
      const between = `${tokens
        .slice(wrong.next, k)
        .map((t) => t.w)
        .join(' ')} `;
      const unit = w(tokens, right.next) === ',' ? right.next + 1 : right.next;
      if (!CORRECTS.test(between) || !UNIT.test(w(tokens, unit))) break;
      return [...tokens.slice(0, i), ...tokens.slice(k, right.next), ...tokens.slice(unit)];
    }
  }
  return tokens;
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
