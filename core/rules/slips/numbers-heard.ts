import { readAs, type SlipRule, wordsOf } from './slip-rule.ts';
import { isNumberWord, isSmallNumber, SMALL_NUMBERS } from './small-number-said.ts';

const PLURAL_NUMBERS = new Map(SMALL_NUMBERS.map((word) => [word === 'six' ? 'sixes' : `${word}s`, word]));

/** What is heard beside numbers: their own value is never touched. */
export const NUMBERS_HEARD: readonly SlipRule[] = [
  // "seven threes got a rip": three's
  ({ tokens, i, before }) => {
    const t = tokens[i]!;
    const one = PLURAL_NUMBERS.get(t.w);
    if (!one || !isNumberWord(before.at(-1))) return undefined;
    if (/^(below|above|next|in|on|that|up|down|with)$/.test(tokens[i + 1]?.w ?? '')) return undefined;
    return {
      tokens: [
        { ...t, w: one, to: t.to - 1, heard: t.w },
        { ...t, w: "'s", from: t.to - 1, glued: true, heard: t.w },
      ],
      took: 1,
      rule: 'slip.plural-number',
    };
  },
  // "row's three, block four", "row's one, two and three": rows, and nobody's
  ({ tokens, i, before }) => {
    const t = tokens[i]!;
    const head = before.at(-1);
    if (t.w !== "'s" || !head || !/^(?:row|block|column)$/.test(head.w) || !isSmallNumber(tokens[i + 1]))
      return undefined;
    const several = /^(?:,|and|&|to|through)$/.test(tokens[i + 2]?.w ?? '') && isSmallNumber(tokens[i + 3]);
    const heard = wordsOf([head, { ...t, glued: true }]);
    return {
      tokens: [{ ...head, w: several ? `${head.w}s` : head.w, to: t.to, heard }],
      took: 1,
      tookBack: 1,
      rule: 'slip.named-line',
    };
  },
  // "rows four in five are tied"
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'in' &&
    isSmallNumber(before.at(-1)) &&
    /^(?:rows|rose|columns|blocks)$/.test(before.at(-2)?.w ?? '') &&
    isSmallNumber(tokens[i + 1])
      ? readAs(tokens[i]!, 'and', 'slip.ear')
      : undefined,
];
