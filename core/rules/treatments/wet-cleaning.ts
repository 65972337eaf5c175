import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const WASHING = new Map([
  ['clean', 'wash'],
  ['cleaned', 'washed'],
  ['cleaning', 'washing'],
]);
const OF_A_SPOT = /^(?:local|localised|localized|spot)$/;

/** "wet cleaning decided against", "wet-cleaned it": the conservators' word for washing; of one spot ("local wet cleaning") it is cleaning. */
export function withWetCleaning(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.w === 'wet')) return tokens;
  const out: Token[] = [];
  for (let k = 0; k < tokens.length; k++) {
    const at = w(tokens, k) === 'wet' ? (w(tokens, k + 1) === '-' ? k + 2 : k + 1) : k;
    const plain = at > k ? WASHING.get(w(tokens, at)) : undefined;
    if (!plain) {
      out.push(tokens[k]!);
      continue;
    }
    const spot = OF_A_SPOT.test(w(tokens, k - 1));
    const said = tokens[at]!;
    out.push({ ...said, from: tokens[k]!.from, w: spot ? said.w : plain });
    k = at;
  }
  return out;
}
