import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';

/** "put a new piece over 2-3": stuff that covers it; "square up": a deed. No block above another is meant. */
export const isNoNeighbour = (tokens: Token[], i: number): boolean =>
  isSquaringUp(tokens, i) ||
  (/^(?:piece|square)$/.test(w(tokens, i)) &&
    w(tokens, i + 1) === 'over' &&
    /^(?:a|another|new|fresh|clean|little|small|big|bigger)$/.test(w(tokens, i - 1)));

/** "to do: square up, wash": the deed, and no square above */
const isSquaringUp = (tokens: Token[], i: number): boolean =>
  w(tokens, i) === 'square' &&
  w(tokens, i + 1) === 'up' &&
  /^(?:|[.,;:!?\n+&-]|--|and|then|to|will|must|now|next|also|still|or|i|we|'ll|need|needs|wants?)$/.test(
    w(tokens, i - 1),
  ) &&
  /^(?:|[.,;:!?\n+&-]|--|and|then|the|it|tomorrow|today|tonight|next|later|again|first|before|after|all|trim)$/.test(
    w(tokens, i + 2),
  );
