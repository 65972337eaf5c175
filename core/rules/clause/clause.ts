import type { Item } from '../item.ts';

/** A stretch of a note that says one thing. `joint` is what stood before it: a mark, a conjunction, or '' where none was said. */
export type Clause = {
  items: Item[];
  joint: string;
  sentence: number;
  /** The sentence that it belongs to ends in a question mark. */
  asked: boolean;
};

/** Words of a clause as tokens' text, for patterns that look at plain words. */
export const wordsOf = (clause: Clause): string => clause.items.map((x) => x.w).join(' ');
