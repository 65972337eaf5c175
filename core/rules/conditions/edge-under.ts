import type { Item } from '../item.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';

const UNDER =
  / edges? (?:is |are |was |were )?(?:right |just |all )*(?:under|underneath|beneath|behind|below|there|in there|under there)(?: (?:it|that|there|the binding|the border|them))?(?= )| (?:under|underneath|beneath|behind)(?: (?:it|that|there|the binding|the border|them))? ,? ?(?:the )?edges? /;

/**
 * "binding off R side & bottom. edges under it frayed", "took the border off the top, and underneath the edge is torn": the edge of the sides
 * that were just told of.
 */
export function edgeUnder(state: ReaderState, items: Item[], placed: ClausePlaces): string[] | undefined {
  if (placed.kind !== 'general' || placed.places.join() !== 'edge' || !UNDER.test(wordsBetween(items)))
    return undefined;
  const last = state.drafts.findLast(({ entry: e }) => e.kind === 'condition' || e.kind === 'treatment');
  const told = last ? (last.entry as { places?: string[] }).places : state.memory.focus;
  return told?.length && told.every((p) => /^(?:edge|border)-/.test(p))
    ? told.map((p) => p.replace('border-', 'edge-'))
    : undefined;
}
