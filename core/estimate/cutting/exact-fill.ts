import { type Block, joinBlocks, turnBlock } from './block.ts';

/** How much has been tried; the search ends by this count and not by the clock, so that it always ends alike. */
export interface Effort {
  spent: number;
}

interface Fill {
  width: number;
  length: number;
  first: Fill | null;
  second: Fill | null;
  cut: 'along' | 'across' | null;
  block: number;
  turned: boolean;
}

const add = (
  fills: Fill[] | null,
  width: number,
  length: number,
  first: Fill,
  second: Fill,
  cut: 'along' | 'across',
): Fill[] => {
  if (!fills) return [{ width, length, first, second, cut, block: -1, turned: false }];
  for (const other of fills) if (other.width <= width && other.length <= length) return fills;
  let kept = 0;
  for (const other of fills) if (!(width <= other.width && length <= other.length)) fills[kept++] = other;
  fills.length = kept;
  fills.push({ width, length, first, second, cut, block: -1, turned: false });
  return fills;
};

const build = (fill: Fill, blocks: readonly Block[]): Block => {
  if (fill.first && fill.second && fill.cut)
    return joinBlocks(build(fill.first, blocks), build(fill.second, blocks), fill.cut);
  const block = blocks[fill.block]!;
  return fill.turned ? turnBlock(block) : block;
};

/**
 * The shortest way to set out a handful of blocks within `width` and `longest`, over every edge-to-edge
 * layout of them: for every set of blocks the sizes it can be brought to, none worse than another both ways.
 * A size that wastes more than the whole may waste is dropped at once, which keeps the lists short. Null
 * where there is none, or where `cap` steps did not suffice.
 */
export const fillExactly = (
  blocks: readonly Block[],
  width: number,
  longest: number,
  cap: number,
  effort: Effort,
): Block | null => {
  const all = (1 << blocks.length) - 1;
  const total = blocks.reduce((sum, block) => sum + block.area, 0);
  const mayWaste = width * longest - total;
  if (mayWaste < 0) return null;
  const areas = new Float64Array(all + 1);
  const sizes: (Fill[] | null)[] = new Array(all + 1).fill(null);
  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i]!;
    if (block.width * block.length - block.area > mayWaste) return null;
    const fills: Fill[] = [];
    const leaf = { first: null, second: null, cut: null, block: i };
    if (block.width <= width && block.length <= longest) {
      fills.push({ ...leaf, width: block.width, length: block.length, turned: false });
    }
    if (block.turnable && block.width !== block.length && block.length <= width && block.width <= longest) {
      fills.push({ ...leaf, width: block.length, length: block.width, turned: true });
    }
    if (fills.length === 0) return null;
    sizes[1 << i] = fills;
  }
  let spent = 0;
  for (let set = 1; set <= all; set++) {
    const low = set & -set;
    areas[set] = areas[set ^ low]! + blocks[31 - Math.clz32(low)]!.area;
    if (set === low) continue;
    const rest = set ^ low;
    const most = areas[set]! + mayWaste;
    let fills: Fill[] | null = null;
    // Every parting of the set in two; the lowest block stays in the first, so none comes twice.
    for (let part = rest; ; part = (part - 1) & rest) {
      if (part !== rest) {
        const firsts = sizes[low | part];
        const seconds = firsts ? sizes[rest ^ part] : null;
        if (firsts && seconds) {
          spent += firsts.length * seconds.length;
          for (const a of firsts) {
            for (const b of seconds) {
              const beside = a.width + b.width;
              const longer = Math.max(a.length, b.length);
              if (beside <= width && beside * longer <= most)
                fills = add(fills, beside, longer, a, b, 'along');
              const wider = Math.max(a.width, b.width);
              const behind = a.length + b.length;
              if (behind <= longest && wider * behind <= most)
                fills = add(fills, wider, behind, a, b, 'across');
            }
          }
        }
      }
      if (part === 0) break;
    }
    sizes[set] = fills;
    if (spent > cap) break;
  }
  effort.spent += spent + 3 ** blocks.length / 16;
  const fills = sizes[all];
  if (!fills) return null;
  const best = fills.reduce((least, fill) =>
    fill.length < least.length || (fill.length === least.length && fill.width < least.width) ? fill : least,
  );
  return build(best, blocks);
};
