import type { Material, MaterialUnit } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import type { purposeAt } from '../purpose-at.ts';

/** A material as far as it has been read: each step adds what it finds and moves `next` behind it. */
export type GoodInHand = {
  readonly items: Item[];
  /** Where it begins. */
  readonly start: number;
  /** It stands in a list of goods, so that a noun of no known kind is a thing too. */
  readonly listed: boolean;
  quantity?: number | undefined;
  unit?: MaterialUnit | undefined;
  /** The item that tells how many or how much. */
  figure?: Item | undefined;
  /** A unit in the plural with no number. */
  uncounted: boolean;
  /** "another", "the same": of what was spoken of before. */
  more: boolean;
  /** The noun that names it, and where its noun phrase begins; -1 for none. */
  head: number;
  first: number;
  material?: Material | undefined;
  points?: 'it' | 'those' | 'more' | undefined;
  purpose?: ReturnType<typeof purposeAt>;
  cost?: { amount: number; each?: true } | undefined;
  next: number;
};

export const isFigure = (x: Item | undefined): boolean => x?.quantity?.value !== undefined;
