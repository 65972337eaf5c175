import { startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { findSpan } from './find-span.ts';

/** "row seven, two till half three": the comma at which hours begin, so that no row takes the first of them for its block. */
export function stretchAtComma(tokens: Token[]): number {
  for (let c = 1; c < tokens.length - 2; c++)
    if (
      tokens[c]!.w === ',' &&
      (tokens[c + 1]!.kind === 'number' || startsNumber(tokens[c + 1]!.w)) &&
      /^(to|till|til|until)$/.test(tokens[c + 2]!.w)
    ) {
      const span = findSpan(tokens, c + 1, 'none');
      if (span?.sure || (span && tokens[c + 2]!.w !== 'to')) return c;
    }
  return -1;
}
