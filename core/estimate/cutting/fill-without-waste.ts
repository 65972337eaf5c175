import { type Block, joinBlocks, turnBlock } from './block.ts';
import type { Effort } from './exact-fill.ts';

interface Found {
  block: Block;
  /** Which pieces are in it, 31 to a word. */
  pieces: Int32Array;
  count: number;
}

const PER_WORD = 31;

/**
 * All waste-free blocks that the pieces can be joined to, the largest tried further first, until one holds
 * them all within `width` and `length`. Where a cloth was cut up without waste and few measures agree by
 * chance, this finds the way back at once; null where there is none, or `cap` steps did not find it.
 */
export const fillWithoutWaste = (
  pieces: readonly Block[],
  width: number,
  length: number,
  cap: number,
  effort: Effort,
): Block | null => {
  const words = Math.ceil(pieces.length / PER_WORD);
  const byWidth = new Map<number, Found[]>();
  const byLength = new Map<number, Found[]>();
  const seen = new Set<string>();
  const waiting: Found[][] = Array.from({ length: pieces.length + 1 }, () => []);
  let most = 1;
  const sharing = (index: Map<number, Found[]>, edge: number): Found[] => {
    let list = index.get(edge);
    if (!list) {
      list = [];
      index.set(edge, list);
    }
    return list;
  };
  const fits = (w: number, l: number, turnable: boolean): boolean =>
    (w <= width && l <= length) || (turnable && l <= width && w <= length);
  const add = (block: Block, set: Int32Array, count: number): void => {
    // Without waste one side fixes the other.
    const key = `${set.join()}:${block.turnable ? Math.min(block.width, block.length) : block.width}`;
    if (seen.has(key)) return;
    seen.add(key);
    waiting[count]!.push({ block, pieces: set, count });
    most = Math.max(most, count);
  };
  const join = (found: Found, view: Block, other: Found, cut: 'along' | 'across'): void => {
    for (let i = 0; i < words; i++) if (found.pieces[i]! & other.pieces[i]!) return;
    const w = cut === 'along' ? view.width + other.block.width : view.width;
    const l = cut === 'along' ? view.length : view.length + other.block.length;
    if (!fits(w, l, view.turnable && other.block.turnable)) return;
    const set = found.pieces.map((word, i) => word | other.pieces[i]!);
    add(joinBlocks(view, other.block, cut), set, found.count + other.count);
  };
  pieces.forEach((block, i) => {
    const set = new Int32Array(words);
    set[Math.floor(i / PER_WORD)] = 1 << (i % PER_WORD);
    add(block, set, 1);
  });
  let steps = 0;
  let whole: Block | null = null;
  while (steps < cap) {
    while (most > 0 && waiting[most]!.length === 0) most -= 1;
    const found = waiting[most]?.pop();
    if (!found) break;
    const { block } = found;
    if (found.count === pieces.length) {
      whole = block.width <= width && block.length <= length ? block : turnBlock(block);
      break;
    }
    const views = block.turnable && block.width !== block.length ? [block, turnBlock(block)] : [block];
    steps += 5;
    for (const view of views) {
      for (const other of sharing(byLength, view.length)) join(found, view, other, 'along');
      for (const other of sharing(byWidth, view.width)) join(found, view, other, 'across');
      steps += sharing(byLength, view.length).length + sharing(byWidth, view.width).length;
    }
    for (const view of views) {
      const seenFrom = { ...found, block: view };
      sharing(byLength, view.length).push(seenFrom);
      sharing(byWidth, view.width).push(seenFrom);
    }
  }
  effort.spent += steps * 2;
  return whole;
};
