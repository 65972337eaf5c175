import type { Token } from './tokenise.ts';

const MIDST =
  /^(?:at|the|an?|and|of|in|on|to|for|with|from|is|was|are|were|'s|by|or|about|my|your|its|bought|got|need)$/;
const isDot = (t: Token | undefined): boolean => t?.kind === 'mark' && (t.w === '.' || t.w === '…');

/**
 * "Now, the oyster taffeta... net over it, maybe... or do I leave it?": dots that she only stops to think at are a comma, where the next
 * word is written small by a hand that begins its sentences with a capital. Other dots are one stop.
 */
export function withPauses(tokens: Token[], text: string): Token[] {
  if (!/\.\.|…/.test(text)) return tokens;
  const capitals = /(?:^|[.?!…] +)[A-Z]/.test(text.trimStart());
  const out: Token[] = [];
  for (let k = 0; k < tokens.length; k++) {
    const t = tokens[k]!;
    let end = k;
    while (isDot(tokens[end])) end++;
    if (end - k < 2 && t.w !== '…') {
      out.push(t);
      continue;
    }
    const next = tokens[end];
    const small = next !== undefined && /[a-z]/.test(text.charAt(next.from));
    // "the claret wants... does silk take an iron?"
    const asks =
      /^(?:do|does|did|is|are|was|were|has|have|can|should|shall|will|what|which|who|where|when|why|how)$/.test(
        next?.w ?? '',
      );
    const w = capitals && small && !asks ? ',' : '.';
    // "I started at... seven", "and... two spools of thread": in the midst of what she is saying
    if (MIDST.test(out.at(-1)?.w ?? '') && next?.kind !== 'mark') {
      k = end - 1;
      continue;
    }
    if (out.length && out.at(-1)!.w !== ',' && next?.w !== ',')
      out.push({ ...t, w, to: tokens[end - 1]!.to });
    k = end - 1;
  }
  return out;
}
