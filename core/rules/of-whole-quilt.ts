import type { Token } from '../text/tokenise.ts';

/** What is of the quilt as a whole, and no block of it. */
const OWN = /^(?:corners?|edges?|sides?|borders?|bindings?|backing|back|front|face|top|bottom|length|width)$/;

/**
 * "the top left corner of the whole quilt", "down the left side of the entire thing": that corner of the quilt, and not of the block told of
 * before. "Whole" says no more than that, and falls out; behind anything else ("the ties out of the whole quilt") it stays.
 */
export function ofWholeQuilt(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.w === 'whole' || t.w === 'entire')) return tokens;
  const at = (k: number): string => tokens[k]?.w ?? '';
  return tokens
    .flatMap((t, k) => {
      if (!/^(?:whole|entire)$/.test(t.w) || !/^(?:the|this|that|my)$/.test(at(k - 1)) || at(k - 2) !== 'of')
        return [t];
      if (!OWN.test(at(k - 3)) || !/^(?:quilt|cover|coverlet|blanket|thing)$/.test(at(k + 1))) return [t];
      return [];
    })
    .map((t, k, all) =>
      t.w === 'thing' && OWN.test(all[k - 3]?.w ?? '') && all[k - 2]?.w === 'of' && all[k - 1]?.w === 'the'
        ? { ...t, w: 'quilt' }
        : t,
    );
}
