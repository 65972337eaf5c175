import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import type { RowWalk } from './along-row.ts';
import type { Mention } from './find-mention.ts';

/** A place found in the words. `outside` tells that a block was named which this quilt has not got. */
export type PlaceFound = {
  next: number;
  places: string[];
  how: 'said' | 'implied';
  rule: string;
  kind: 'blocks' | 'part' | 'pointer';
  outside?: boolean;
  /** A corner that may be a block or the quilt's own corner. */
  soft?: boolean;
  /** The block that a neighbour was counted from. */
  from?: string;
  /** All the blocks that a neighbour, or several, were counted from. */
  bases?: string[];
  /** Those that the words except ("all but the last"): what "that one" is, told behind. */
  bar?: string[];
  /** The things told of together from which this one was picked. */
  among?: string[];
};

/** What a place may lean on: the grid, and the places spoken of before, newest last. */
export type PlaceContext = {
  grid: QuiltGrid;
  /** The cloths of this quilt: what lies "below the sateen". */
  fabrics?: FabricIndex;
  focus: string[];
  earlier: string[][];
  /** Blocks of the cloth spoken of since a place was last named: what "those" and "all three of them" are. */
  cloth?: string[];
  /** Three or more blocks that one note told one by one: what "the first one" and "the last of them" are. */
  list?: string[];
  /** Blocks told one by one so far in this note. */
  told?: string[];
  /** What was told before, and where: what "that tear" is. */
  mentions?: Mention[];
  /** The neighbour told last, and the block that it was counted from. */
  stepped?: { from: string; to: string[] };
  /** The neighbours told last, one or several, and what they were counted from: a mend is counted from there as well. */
  counted?: { from: string[]; to: string[] };
  /** A block that the quilt has not got was named, and none since: what lies beside it can't be known. */
  lost?: boolean;
  /** What was read of this note so far. */
  items?: Item[];
  /** The row along which she tells block after block. */
  walk?: RowWalk;
};

/** Blocks told in so many words, which are in the grid. `next` is the index behind them. */
export const blocksSaid = (next: number, places: string[], rule: string): PlaceFound => ({
  next,
  places,
  how: 'said',
  rule,
  kind: 'blocks',
});

/** Blocks that are told by their place among others: of the line or the group spoken of. */
export const blocksPicked = (next: number, places: string[]): PlaceFound => ({
  next,
  places,
  how: 'implied',
  rule: 'place.nth-of-line',
  kind: 'blocks',
});
