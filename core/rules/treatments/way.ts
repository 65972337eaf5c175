import type { Action, RemovedObject } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';

/** A treatment that the words name, as a verb or as a thing ("net over it", "silk behind"). */
export type Way = {
  action?: Action;
  object?: RemovedObject;
  form: 'past' | 'ing' | 'base' | 'noun';
  /** Index in the clause of the word that the state hangs on. */
  at: number;
  items: Item[];
  /** What is put on, in or behind. */
  stuff?: Item;
  rule: string;
};

/** A word of a clause with what the rules look at: six words before and after it, padded with spaces, and the whole clause. */
export type WordAt = {
  items: Item[];
  k: number;
  item: Item;
  before: string;
  after: string;
  all: string;
  /** Words of choosing stand in the clause: a thing alone ("net or a patch") then names a way. */
  choosing: boolean;
  /** What "it" and "them" are when something is taken off. */
  thing: string | undefined;
  /** The ways found before. */
  ways: Way[];
  /** Indices of words that have been read as part of a way. */
  used: Set<number>;
};

/** What a rule finds at a word: a way and the words it takes; 'none' where no later rule may read a way there either. */
export type WayFound = { way: Way; takes: number[] } | 'none' | undefined;

/** A way with the indices of the words that it takes. */
export const found = (way: Way, ...takes: number[]): WayFound => ({ way, takes });
