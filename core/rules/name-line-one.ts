import type { Token } from '../text/tokenise.ts';

const WHICH =
  /^(?:top|bottom|last|first|middle|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|left|right|centre|center|end|next)$/;
const LINES = /^(?:rows|columns|cols)$/;
const ENDS =
  /^(?:|[.,;:!?\n]|-|--|and|but|is|are|'s|has|have|too|as|by|with|in|for|now|tonight|today|i|took|then|so|there|that)$/;
/** What may follow "in the third" where a row is meant. */
const TELLS = /^(?:there|every|each|all|it|a|an|two|three|only|just|everything|nothing|,)$/;

/**
 * "the top three rows and the bottom one", "in the first row …; in the third there is …": a line that is not named anew, in a statement
 * that spoke of lines. It gets the name of those.
 */
export function nameLineOne(tokens: Token[]): Token[] {
  if (!tokens.some((t) => /^(?:rows?|columns?|cols?)$/.test(t.w))) return tokens;
  return tokens.flatMap((t, k) => {
    const w = (n: number): string => tokens[k + n]?.w ?? '';
    // "rows one and two, and the bottom one"
    if (t.w === 'one' && WHICH.test(w(-1)) && w(-2) === 'the' && ENDS.test(w(1))) {
      let j = k - 3;
      while (/^(?:and|&|,|plus|also|bar|but|except|not)$/.test(tokens[j]?.w ?? '')) j--;
      const lines = tokens[j]?.w ?? '';
      if (j < k - 3 && LINES.test(lines)) return [{ ...t, w: lines.replace(/s$/, '') }];
    }
    // "…; in the third there is a hole"
    if (
      WHICH.test(t.w) &&
      w(-1) === 'the' &&
      /^(?:in|on|along)$/.test(w(-2)) &&
      TELLS.test(w(1)) &&
      /^(?:[.,;]|and|but)$/.test(w(-3))
    ) {
      const before = tokens
        .slice(0, k - 2)
        .findLast((x) => /^(?:rows?|columns?|blocks?|border|binding|cols?)$/.test(x.w));
      const line = tokens.slice(0, k - 2).findLast((x) => /^(?:row|column|col)$/.test(x.w));
      if (line && before && !/^b[oi]/.test(before.w)) return [t, { ...t, w: line.w, from: t.to }];
    }
    // "row 4: darned the first, patched the last with flannel"
    if (
      OF_ROW.test(t.w) &&
      w(-1) === 'the' &&
      DONE_TO.test(w(1)) &&
      /ed$|^left$/.test(w(-2)) &&
      underRow(tokens, k)
    )
      return [t, { ...t, w: 'block', from: t.to }];
    return [t];
  });
}

const OF_ROW = /^(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|last)$/;
const DONE_TO = /^(?:|[,.;]|and|with|in|by)$/;

/** Does the sentence stand under "row 4:"? */
function underRow(tokens: Token[], k: number): boolean {
  let from = k;
  while (from > 0 && !/^[.;!?\n]$/.test(tokens[from - 1]!.w)) from--;
  const colon = tokens.findIndex((t, m) => m > from && m < k && t.w === ':');
  return colon === from + 2 && tokens[from]!.w === 'row';
}
