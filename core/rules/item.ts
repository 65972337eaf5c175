import type {
  Action,
  Finding,
  Material,
  Measure,
  RemovedObject,
  Stitch,
  Task,
  Topic,
} from '../../shared/vocabulary.ts';
import type { Token } from '../text/tokenise.ts';
import type { CostFound, QuantityFound } from './amounts/find-amount.ts';
import type { PlaceFound } from './places/place-found.ts';
import type { ClockFound } from './times/find-clock.ts';
import type { DurationFound } from './times/find-duration.ts';
import type { SpanFound } from './times/find-span.ts';

/** A cloth of this quilt that the words name, in full or by a part of its name. */
export type FabricFound = {
  names: string[];
  full: boolean;
  words: string;
  /** Blocks of the cloth that the note excepts ("all the gingham bar 2-4"). */
  bar?: string[];
};

/**
 * A run of tokens that means something, with every sense that its words can have. Which sense holds is decided by
 * the clause around it: "binding" is a part, a material, a kind of work and a matter to decide.
 */
export type Item = {
  /** First token and the one after the last. */
  i: number;
  j: number;
  w: string;
  token: Token;
  /** Offset of the end of its last word. */
  end?: number;
  place?: PlaceFound;
  part?: string;
  finding?: Finding;
  fail?: boolean;
  seam?: boolean;
  stitches?: boolean;
  action?: { v: Action; form: 'past' | 'ing' | 'base' };
  /** A deed done to blocks by the words around it, whatever thing the word may be elsewhere ("busy backing 3-4"). */
  deed?: true;
  stitch?: Stitch;
  /** A stitch word that may be something else ("hand", "blanket"). */
  weakStitch?: boolean;
  material?: Material;
  object?: RemovedObject;
  task?: Task;
  topic?: Topic;
  measure?: Measure;
  fabric?: FabricFound;
  quantity?: QuantityFound;
  cost?: CostFound;
  duration?: DurationFound;
  clock?: ClockFound;
  span?: SpanFound;
  /** Of "same": the places after which something was done. */
  model?: string[];
};

/**
 * An item without a sense as yet. Every sense is there from the beginning, so that all items are of one shape: the engine then
 * reads their fields directly (a third of the reader's time went into looking them up while each item had a shape of its own).
 */
export const makeItem = (i: number, j: number, w: string, token: Token): Item => ({
  i,
  j,
  w,
  token,
  end: undefined,
  place: undefined,
  part: undefined,
  finding: undefined,
  fail: undefined,
  seam: undefined,
  stitches: undefined,
  action: undefined,
  deed: undefined,
  stitch: undefined,
  weakStitch: undefined,
  material: undefined,
  object: undefined,
  task: undefined,
  topic: undefined,
  measure: undefined,
  fabric: undefined,
  quantity: undefined,
  cost: undefined,
  duration: undefined,
  clock: undefined,
  span: undefined,
  model: undefined,
});

/** The boundary that stays where an item is taken out, or the stop that is put there. */
export const boundaryBefore = (item: Item, mark: '--' | ';' | ':' | ',' | 'except' = '--'): Item =>
  makeItem(item.i, item.i, mark, {
    ...item.token,
    w: mark,
    kind: 'mark',
    to: item.token.from,
    glued: false,
  });

/** Words that were not said, at the place of `at`: "maybe leave", "is called off". */
export const wordsAt = (at: Item, said: string): Item[] =>
  said.split(' ').map((w) => makeItem(at.i, at.j, w, { ...at.token, w, kind: 'word', glued: false }));
