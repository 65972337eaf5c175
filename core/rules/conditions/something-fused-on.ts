import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const UNKNOWN = /^(?:something|summat|stuff)$/;
const SOMEBODY = /^(?:somebody|someone|whoever|they|she|he)$/;
const FUSED = /^(?:fused|ironed|bonded)$/;
const BETWEEN = /^(?:that|which|'s|is|was|has|had|been|old|already)$/;

/**
 * "something fused on behind 3-3", "there's old interfacing fused on the back of it": what lies fused behind a block, and nobody at the
 * bench put it there, is interfacing that was found. The tokens as if "someone fused interfacing behind 3-3" had been said.
 */
export function withSomethingFusedOn(tokens: Token[]): Token[] {
  const at = tokens.findIndex((t, k) => FUSED.test(t.w) && behindAt(tokens, k + 1) > 0);
  if (at < 1) return tokens;
  // "somebody's fused something behind 3-3"
  if (UNKNOWN.test(w(tokens, at + 1))) {
    if (!tokens.slice(Math.max(0, at - 3), at).some((t) => SOMEBODY.test(t.w))) return tokens;
    return tokens.map((t, k) => (k === at + 1 ? { ...t, w: 'interfacing' } : t));
  }
  let from = at;
  while (BETWEEN.test(w(tokens, from - 1)) && from > at - 4) from--;
  const thing = tokens[from - 1];
  if (!thing) return tokens;
  const old =
    thing.w === 'interfacing' &&
    (w(tokens, from - 2) === 'old' || tokens.slice(from, at).some((t) => t.w === 'old'));
  if (!UNKNOWN.test(thing.w) && !old) return tokens;
  let head = old ? from - 2 : from - 1;
  // "there's something", "some old interfacing"
  while (/^(?:there|'s|is|was|some|an|a|bit|of)$/.test(w(tokens, head - 1)) && head > from - 7) head--;
  // "somebody had something fused on behind", "3-3 has something fused on behind"
  if (/^(?:had|has|'d|got)$/.test(w(tokens, head - 1))) {
    const known = old || SOMEBODY.test(w(tokens, head - 2));
    const said = [...(known ? [] : ['old']), 'interfacing'].map((word) => ({ ...thing, w: word }));
    return [...tokens.slice(0, from - 1), ...said, ...tokens.slice(from)];
  }
  const verb = tokens[at]!;
  return [
    ...tokens.slice(0, head),
    { ...thing, w: 'someone', kind: 'word' },
    verb,
    { ...thing, w: 'interfacing', kind: 'word' },
    ...tokens.slice(behindAt(tokens, at + 1) - 1),
  ];
}

/** The index behind "(on) behind", "(on) the back of" that begins at `k`; 0 where none does. */
function behindAt(tokens: Token[], k: number): number {
  let m = k;
  if (UNKNOWN.test(w(tokens, m)) || w(tokens, m) === 'on') m++;
  if (w(tokens, m) === 'on') m++;
  return /^(?:behind|underneath|beneath)$/.test(w(tokens, m)) ? m + 1 : 0;
}
