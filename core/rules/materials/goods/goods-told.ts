import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Draft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import type { Claims, Sentence } from '../../read-amounts.ts';
import type { ReaderState } from '../../reader-state.ts';

/** A sentence with the items of the one before it. */
export type Told = Sentence & { before?: Item[] | undefined };

/** One sentence while its goods are read. */
export type GoodsTold = {
  state: ReaderState;
  claims: Claims;
  sentence: Told;
  /** Its items without a heading as in "batting: bought …". */
  items: Item[];
  /** Does it tell prices, or is it a bill? */
  priced: boolean;
  /** Is a shop spoken of? */
  shop: boolean;
  /** What the words last found say of goods. */
  use: MaterialUse | undefined;
  /** The drafts of goods made of it so far. */
  made: Draft[];
};

/** The list of goods last told: what of them, in which sentence as the clauses count, and in which of those with goods. */
export type ListBefore = { use: MaterialUse; sentence: number; number: number };
