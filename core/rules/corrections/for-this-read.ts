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
  const comma = (at: Token): Token => ({ ...at, w: ',', kind: 'mark', to: at.from, glued: false });
  if (tokens[from]?.w === 'for') {
    const [wrong, right] = [tokens.slice(from + 1, read), tokens.slice(read + 1, end)];
    if (!fits(wrong) || !fits(right)) return tokens;
    return [
      ...tokens.slice(0, from),
      { ...tokens[from]!, w: 'not' },
      ...wrong,
      comma(tokens[read]!),
      ...right,
      ...tokens.slice(end),
    ];
  }
  const before = tokens.findIndex((t, k) => k > read && k < end && t.w === 'for');
  if (from !== read || before < 0) return tokens;
  const [right, wrong] = [tokens.slice(read + 1, before), tokens.slice(before + 1, end)];
  if (!fits(wrong) || !fits(right) || !right.some((t) => t.kind === 'number' || /^(?:row|block)$/.test(t.w)))
    return tokens;
  return [
    ...tokens.slice(0, from),
    { ...tokens[read]!, w: 'not' },
    ...wrong,
    comma(tokens[before]!),
    ...right,
    ...tokens.slice(end),
  ];
}

const fits = (named: Token[]): boolean =>
  named.length > 0 && named.length <= MOST && !named.some((t) => /^(?:i|it|me|that|back|out|up)$/.test(t.w));
