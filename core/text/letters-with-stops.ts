import type { Token } from './tokenise.ts';

const LETTERS = new Set('sa fq lh rh tl tr bl br'.split(' '));

/** The short form that is written in letters from `i` on, each with its stop, or with a stroke between them: "s.a.", "l.h.s.", "s/a". */
export function lettersAt(tokens: Token[], i: number): { w: string; end: number } | undefined {
  let letters = '';
  let end = i;
  while (/^[a-z]$/.test(tokens[end]?.w ?? '') && (end === i || tokens[end]!.glued)) {
    letters += tokens[end]!.w;
    end++;
    if (!tokens[end]?.glued || !/^[./]$/.test(tokens[end]!.w)) break;
    end++;
  }
  // the side of "l.h.s." is said already
  const w = /^[lr]hs$/.test(letters) ? letters.slice(0, 2) : letters;
  return LETTERS.has(w) && end > i + 2 ? { w, end } : undefined;
}
