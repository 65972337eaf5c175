import type { Token } from '../../text/tokenise.ts';

/** What may stand before it: "sorry, for 4-2 read 4-3". */
const LEAD = /^(?:sorry|oh|no|correction|erratum|in|that|the|last|note|one|please|and|,|:|-|\.)$/;
const ENDS = /^[,.;!]$/;
/** Longest of what is named: "row three block two". */
const MOST = 6;

/** "for 4-2 read 4-3, otherwise correct", "read 4-3 for 4-2": a printer's way of mending, read as "not 4-2, 4-3, otherwise correct". */
export function forThisRead(tokens: Token[]): Token[] {
  const read = tokens.findIndex((t) => t.w === 'read');
  if (read < 0) return tokens;
  let from = 0;
  while (from < read && LEAD.test(tokens[from]!.w)) from++;
  let end = tokens.findIndex((t, k) => k > read && ENDS.test(t.w));
  if (end < 0) end = tokens.length;
  // which of them is led by the other word: "for WRONG read RIGHT", "read RIGHT for WRONG"
  const first = tokens[from]?.w === 'for';
  const joint = first ? read : tokens.findIndex((t, k) => k > read && k < end && t.w === 'for');
  if (joint < 0 || (!first && from !== read)) return tokens;
  const [one, other] = [tokens.slice(from + 1, joint), tokens.slice(joint + 1, end)];
  const [wrong, right] = first ? [one, other] : [other, one];
  if (!fits(wrong) || !fits(right)) return tokens;
  if (!first && !right.some((t) => t.kind === 'number' || /^(?:row|block)$/.test(t.w))) return tokens;
  const between = tokens[joint]!;
  return [
    ...tokens.slice(0, from),
    { ...tokens[from]!, w: 'not' },
    ...wrong,
    { ...between, w: ',', kind: 'mark', to: between.from, glued: false },
    ...right,
    ...tokens.slice(end),
  ];
}

const fits = (named: Token[]): boolean =>
  named.length > 0 && named.length <= MOST && !named.some((t) => /^(?:i|it|me|that|back|out|up)$/.test(t.w));
