/**
 * A rectangle that one or more pieces are cut from: a single piece, or two blocks side by side
 * (`along`: the cut between them runs down the length) or one behind the other (`across`). Whatever is
 * built of blocks is cuttable edge to edge. Sizes are whole numbers of a common measure.
 */
export interface Block {
  readonly width: number;
  readonly length: number;
  /** Area of the pieces in it; the rest is waste. */
  readonly area: number;
  /** Whether every piece in it may be turned a quarter. */
  readonly turnable: boolean;
  readonly cut: 'along' | 'across' | null;
  readonly first: Block | null;
  readonly second: Block | null;
  /** Which piece, for a single one. */
  readonly piece: number;
  /** Whether that piece lies turned from how it was given. */
  readonly turned: boolean;
}

export const pieceBlock = (width: number, length: number, piece: number, turnable: boolean): Block => ({
  width,
  length,
  area: width * length,
  turnable: turnable || width === length,
  cut: null,
  first: null,
  second: null,
  piece,
  turned: false,
});

export const joinBlocks = (first: Block, second: Block, cut: 'along' | 'across'): Block => ({
  width: cut === 'along' ? first.width + second.width : Math.max(first.width, second.width),
  length: cut === 'along' ? Math.max(first.length, second.length) : first.length + second.length,
  area: first.area + second.area,
  turnable: first.turnable && second.turnable,
  cut,
  first,
  second,
  piece: -1,
  turned: false,
});

export const turnBlock = (block: Block): Block =>
  block.first && block.second
    ? {
        ...block,
        width: block.length,
        length: block.width,
        cut: block.cut === 'along' ? 'across' : 'along',
        first: turnBlock(block.first),
        second: turnBlock(block.second),
      }
    : {
        ...block,
        width: block.length,
        length: block.width,
        turned: block.width === block.length ? block.turned : !block.turned,
      };

export const wasteOf = (block: Block): number => block.width * block.length - block.area;

/** Blocks one behind the other, each turned where it would not fit the width. */
export const stackBlocks = (blocks: readonly Block[], width: number): Block =>
  blocks
    .map((block) => (block.width <= width ? block : turnBlock(block)))
    .reduce((all, block) => joinBlocks(all, block, 'across'));
