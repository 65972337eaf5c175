import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';

/** "the bottom border and the one on the left": a side like the one just told, and no block. */
export function sideLike(tokens: Token[], i: number, { focus }: PlaceContext): PlaceFound | undefined {
  const j = w(tokens, i) === 'the' ? i + 1 : i;
  if (w(tokens, j) !== 'one') return undefined;
  const told = tokens
    .slice(Math.max(0, j - 9), j)
    .findLast(
      (t, n, all) =>
        /^(border|edge)$/.test(t.w) && /^(left|right|top|bottom|hand)$/.test(all[n - 1]?.w ?? ''),
    )?.w;
  const kind = told ?? /^(border|edge)-/.exec(focus.at(-1) ?? '')?.[1];
  if (!kind || !/^(on|at|along|down|across|to)$/.test(w(tokens, j + 1))) return undefined;
  let k = j + 2;
  if (/^(the|its)$/.test(w(tokens, k))) k++;
  const side = { left: 'left', right: 'right', top: 'top', bottom: 'bottom', upper: 'top', lower: 'bottom' }[
    w(tokens, k)
  ];
  if (!side) return undefined;
  k++;
  while (/^(hand|side|edge)$/.test(w(tokens, k))) k++;
  if (w(tokens, k) === 'of') return undefined;
  return { next: k, places: [`${kind}-${side}`], how: 'implied', rule: 'place.side-like', kind: 'pointer' };
}
