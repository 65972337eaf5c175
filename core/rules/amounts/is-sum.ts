import type { Token } from '../../text/tokenise.ts';
import type { Item } from '../item.ts';
import { LEXICON } from '../lexicon-index.ts';

/** "the calico was three fifty": a sum behind a material, and no hour. */
export const isSum = (tokens: Token[], i: number): boolean =>
  /^(was|were|is|came|cost)$/.test(tokens[i - 1]?.w ?? '') &&
  (Boolean(LEXICON.longestAt(tokens, i - 2)?.payloads.some((s) => s.k === 'material')) ||
    // "bought a fat quarter of rose print that was four fifty"
    (/^(that|which|it|they|those)$/.test(tokens[i - 2]?.w ?? '') &&
      tokens.slice(Math.max(0, i - 24), i - 2).some((t) => /^(bought|got|ordered|picked)$/.test(t.w)) &&
      !tokens.slice(i - 3, i).some((t) => /^(at|when|since|till|until)$/.test(t.w)) &&
      tokens
        .slice(Math.max(0, i - 8), i - 2)
        .some((_t, k, few) =>
          LEXICON.longestAt(tokens, i - 2 - few.length + k)?.payloads.some((s) => s.k === 'material'),
        )));

/** "90 cm iron-on interfacing 6.30": a sum right behind goods with their amount. */
export const isListedPrice = (token: Token, before: Item[]): boolean =>
  /^\d+\.\d\d$/.test(token.w) &&
  before.at(-1)?.material !== undefined &&
  before.slice(-4, -1).some((x) => x.quantity?.unit);
