import type { Item } from '../item.ts';
import type { Mention } from './find-mention.ts';
import { splitBlock } from './grid.ts';

const CLOSES =
  /^(?:closed|shut|sewn|sewed|done|fixed|mended|finished|stitched|resewn|resewed|redone|seen to)$/;

/**
 * "row 4 seam sewn shut", "closed the seam in row four": of a line that has one open seam, that seam is meant, and not every seam of it.
 * A seam that is found open there is a new one.
 */
export function withSeamOfLine(items: Item[], mentions: Mention[]): Item[] {
  const at = items.findIndex((x, k) => isLine(x) && seamBeside(items, k));
  if (at < 0) return items;
  const closed = items.some((x) => x.action?.v === 'resew' || CLOSES.test(x.w));
  if (!closed || items.some((x) => (x.fail && !CLOSES.test(x.w)) || x.finding === 'split-seam')) return items;
  const line = items[at]!.place!;
  const open = mentions.filter(
    (m, k) =>
      m.finding === 'split-seam' &&
      m.places.length > 0 &&
      m.places.length < line.places.length &&
      m.places.every((p) => line.places.includes(p)) &&
      !mentions.slice(k).some((n) => n.action === 'resew' && n.places.some((p) => m.places.includes(p))),
  );
  if (open.length !== 1) return items;
  return items.map((x, k) => (k === at ? { ...x, place: { ...line, places: open[0]!.places } } : x));
}

/** A whole row or column, by its number. */
const isLine = (x: Item): boolean => {
  const blocks =
    x.place?.how === 'said' && x.place.kind === 'blocks' ? x.place.places.map((p) => splitBlock(p)) : [];
  const [first] = blocks;
  return (
    blocks.length > 2 &&
    /^(?:the )?(?:row|r|column|col|c|top|bottom|middle|first|second|third|fourth|fifth|last)\b/.test(x.w) &&
    (blocks.every((b) => b?.row === first?.row) || blocks.every((b) => b?.block === first?.block))
  );
};

const seamBeside = (items: Item[], k: number): boolean => {
  const after = items[k + 1]?.w === "'s" ? items[k + 2] : items[k + 1];
  if (after?.seam && !/s$/.test(after.w)) return true;
  const before = /^(?:in|of|on|along)$/.test(items[k - 1]?.w ?? '') ? items[k - 2] : undefined;
  return before?.seam === true && !/s$/.test(before.w);
};
