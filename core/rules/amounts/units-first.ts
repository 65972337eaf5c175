import { startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';

/** What goods come in, as a heading. */
const COMES_IN =
  /^(?:reels?|spools?|skeins?|packs?|pkts?|packets?|balls?|rolls?|hanks?|cards?|fqs?|yards|yds|yd|metres|meters)$/;

/** "betweens 6.10. reels: 3", "pkts: 2": how many, told behind what is counted, as if it stood before it. */
export function withUnitsFirst(tokens: Token[]): Token[] {
  if (!tokens.some((t, k) => isHead(tokens, k, t))) return tokens;
  const out: Token[] = [];
  for (let k = 0; k < tokens.length; k++) {
    const t = tokens[k]!;
    if (isHead(tokens, k, t)) {
      out.push({ ...tokens[k + 2]!, glued: false }, { ...t, glued: false });
      k += 2;
    } else out.push(t);
  }
  return out;
}

const isHead = (tokens: Token[], k: number, t: Token): boolean => {
  const number = tokens[k + 2];
  return (
    COMES_IN.test(t.w) &&
    /^(?:|[.,;\n])$/.test(tokens[k - 1]?.w ?? '') &&
    /^[:=]$/.test(tokens[k + 1]?.w ?? '') &&
    number !== undefined &&
    (number.kind === 'number' || startsNumber(number.w)) &&
    /^(?:|[.,;\n]|not)$/.test(tokens[k + 3]?.w ?? '')
  );
};
