import type { Token } from '../../text/tokenise.ts';
import type { PlaceContext, PlaceFound } from '../places/place-found.ts';
import { findBlocks } from '../places/place-pipeline.ts';

/** "not row three, row four": what is denied at the beginning of a note ends at the comma. */
export function blocksAt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (i > 0 && i < 6 && /^(not|n't)$/.test(tokens[i - 1]!.w)) {
    const comma = tokens.findIndex((t, k) => k > i && t.w === ',');
    if (comma > 0) return findBlocks(tokens.slice(0, comma), i, ctx);
  }
  return findBlocks(tokens, i, ctx);
}
