import { type Block, joinBlocks, turnBlock } from './block.ts';

const row = (blocks: readonly Block[], cut: 'along' | 'across'): Block =>
  blocks.reduce((all, block) => joinBlocks(all, block, cut));

/**
 * Equal pieces set out in full rows across the cloth, the rows behind one another as one block; what does
 * not fill a row stays single. Keeps a cutting of hundreds of squares small enough to search.
 */
export const gridBlocks = (
  pieces: readonly Block[],
  width: number,
  lie: 'given' | 'turned' | 'closest',
): Block[] => {
  const kinds = new Map<string, Block[]>();
  for (const piece of pieces) {
    const key = `${piece.width} ${piece.length} ${piece.turnable}`;
    kinds.set(key, [...(kinds.get(key) ?? []), piece]);
  }
  const blocks: Block[] = [];
  for (const kind of kinds.values()) {
    const one = kind[0]!;
    const spare = (measure: number): number =>
      measure > width ? Number.POSITIVE_INFINITY : (width % measure) / width;
    const mayTurn = one.turnable && one.length <= width;
    const turn =
      one.width > width ||
      (mayTurn && (lie === 'turned' || (lie === 'closest' && spare(one.length) < spare(one.width))));
    const laid = turn ? kind.map(turnBlock) : kind;
    const inRow = Math.max(1, Math.floor(width / laid[0]!.width));
    const rows: Block[] = [];
    let at = 0;
    for (; at + inRow <= laid.length; at += inRow) rows.push(row(laid.slice(at, at + inRow), 'along'));
    if (rows.length > 0) blocks.push(row(rows, 'across'));
    // The rest of a row is still one row where there are many.
    const rest = laid.slice(at);
    if (rest.length > 6) blocks.push(row(rest, 'along'));
    else blocks.push(...rest);
  }
  return blocks;
};
