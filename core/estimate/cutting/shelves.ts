import { type Block, joinBlocks, stackBlocks, turnBlock } from './block.ts';

/**
 * Rows of blocks, the longest first, each into the first row with room (first fit by falling length);
 * a plain layout that takes any number of pieces, to begin the search from.
 */
export const shelve = (given: readonly Block[], width: number, lie: 'given' | 'long' | 'wide'): Block => {
  const blocks = given.map((block) => {
    const turned = block.turnable ? turnBlock(block) : block;
    if (block.width > width) return turned;
    if (turned.width > width || lie === 'given') return block;
    return (lie === 'long') === block.length >= block.width ? block : turned;
  });
  blocks.sort((a, b) => b.length - a.length || b.width - a.width);
  const rows: { columns: Block[]; used: number; length: number }[] = [];
  for (const block of blocks) {
    let row = rows.find(({ used }) => used + block.width <= width);
    // On top of a column of the same width, where the row still has the length for it.
    let put = false;
    for (const other of rows) {
      const at = other.columns.findIndex(
        (column) => column.width >= block.width && column.length + block.length <= other.length,
      );
      if (at >= 0) {
        other.columns[at] = joinBlocks(other.columns[at]!, block, 'across');
        put = true;
        break;
      }
    }
    if (put) continue;
    if (!row) {
      row = { columns: [], used: 0, length: block.length };
      rows.push(row);
    }
    row.columns.push(block);
    row.used += block.width;
  }
  return stackBlocks(
    rows.map(({ columns }) => columns.reduce((all, column) => joinBlocks(all, column, 'along'))),
    width,
  );
};
