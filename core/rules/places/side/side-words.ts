import { SIDES } from '../../../lexicon/place-words.ts';

/** A table asked by words that anyone may say: a Map has no "constructor". */
export const SIDE_OF = new Map(Object.entries(SIDES));

export const isSide = (word: string): boolean => SIDE_OF.has(word);

export const SIDE_NOUNS = new Map<string, 'border' | 'edge' | 'binding'>(
  Object.entries({
    border: 'border',
    borders: 'border',
    edge: 'edge',
    edges: 'edge',
    hem: 'edge',
    binding: 'binding',
  }),
);

export const PARTS_WITH_SIDES = new Map<string, 'border' | 'edge'>(
  Object.entries({
    border: 'border',
    borders: 'border',
    binding: 'edge',
    edge: 'edge',
    edges: 'edge',
  }),
);

/** Sides by their letter, as terse notes write them beside "border" or "edge". */
export const LETTERS = new Map<string, 'top' | 'right' | 'bottom' | 'left'>(
  Object.entries({
    t: 'top',
    r: 'right',
    b: 'bottom',
    l: 'left',
  }),
);

/** What makes another place of a side: "the bottom row", "the top right", "the left half". */
export const NO_SIDE_BEFORE =
  /^(rows?|blocks?|blks?|squares?|corners?|columns?|cols?|left|right|half|halves|of|seams?|layers?|two|three|four|most|third|quarter|middle|end|stitch|stitching|thread|quilt|patch|patches|piece|fabric)$/;

export const STOP = /^[.;!?\n]$/;

/** Whose side is meant by a noun behind it: the sides of a binding are edges. */
export const partOf = (noun: string): 'border' | 'edge' =>
  SIDE_NOUNS.get(noun) === 'border' ? 'border' : 'edge';

/** The part that a word names whose sides may be told after it. */
export const partNamed = (word: string): 'border' | 'edge' | undefined =>
  word === 'bdg' || word === 'bndg' ? 'edge' : PARTS_WITH_SIDES.get(word);
