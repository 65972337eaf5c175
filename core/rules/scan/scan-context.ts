import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import type { PlaceContext } from '../places/place-found.ts';

/** What a word may lean on while the tokens are gone through: the places, the cloths, what was read up to it, and what the note is about. */
export type ScanContext = {
  ctx: PlaceContext;
  fabrics: FabricIndex;
  items: Item[];
  /** Does it tell of buying? */
  commerce: boolean;
  /** Does it tell of work? */
  work: boolean;
};
