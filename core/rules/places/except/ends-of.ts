import type { Item } from '../../item.ts';
import { splitBlock } from '../grid.ts';

const NTH = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
const ENDS =
  /^(first|top|left|last|bottom|end|final|right|leftmost|rightmost|lowest|highest|topmost|bottommost|lower|upper)$/;
export const UPPER = /^(first|top|left|leftmost|highest|topmost|upper)$/;

/** "the third one along", "the second block across", "the fourth from the left": where these words end. */
function along(items: Item[], k: number): number {
  let m = k;
  if (/^(along|across|in|over)$/.test(items[m]?.w ?? '') && !items[m + 1]?.place) m++;
  if (items[m]?.w === 'from' && /^(the )?left$/.test(items[m + 1]?.w ?? '')) return m + 2;
  return items[m]?.w === 'from' && items[m + 1]?.w === 'the' && items[m + 2]?.w === 'left' ? m + 3 : m;
}

/** "every row but the last", "all the columns bar the first": the lines that are excepted from, where the word before is of lines. */
function linesExceptedFrom(items: Item[], k: number, base: string[]): string[][] | undefined {
  const told = items.slice(0, k).findLast((x) => x.place?.places.length === base.length);
  const noun = /\b(row|column)(?:s?$|s\b)/.exec(told?.w ?? '')?.[1];
  const at = base.map((p) => splitBlock(p));
  if (!noun || at.some((p) => !p)) return undefined;
  const lines = byLine(base, noun === 'row' ? 'row' : 'block');
  return lines.length > 1 ? lines : undefined;
}

/** Blocks by the rows or the columns that they lie in, from the top or the left. */
export function byLine(blocks: string[], axis: 'row' | 'block'): string[][] {
  const lineOf = (p: string): number => splitBlock(p)![axis];
  const lines = [...new Set(blocks.map(lineOf))].sort((a, b) => a - b);
  return lines.map((line) => blocks.filter((p) => lineOf(p) === line));
}

/** The blocks of `base` that an end of it means: "the first one", "the last two", "the end blocks", "the two ends". */
export function endsOf(
  items: Item[],
  k: number,
  base: string[],
): { places: string[]; next: number } | undefined {
  let m = k;
  const count = (x: Item | undefined): number | undefined =>
    x?.quantity && !x.quantity.unit && x.quantity.value! < 7
      ? x.quantity.value
      : x?.w === 'both'
        ? 2
        : undefined;
  let n = count(items[m]);
  if (n !== undefined) m++;
  const end = items[m]?.w ?? '';
  const nth = NTH.indexOf(end);
  if (nth > 0 && base[nth]) {
    const noun = items[m + 1]?.w ?? '';
    return /^(row|column|col)s?$/.test(noun)
      ? undefined
      : { places: [base[nth]!], next: along(items, /^(one|block|square)$/.test(noun) ? m + 2 : m + 1) };
  }
  // "the middle block" may be one item, where the quilt has a middle block or is asked for it
  const middle = /^(?:the )?(?:middle|centre|center)( one| block| square)?$/.exec(end);
  if (middle && n === undefined)
    return base.length % 2
      ? {
          places: [base[(base.length - 1) / 2]!],
          next: m + (!middle[1] && /^(one|block|square)$/.test(items[m + 1]?.w ?? '') ? 2 : 1),
        }
      : undefined;
  const corner = inCorner(`${end} ${items[m + 1]?.w}`, base);
  if (corner) {
    const next = /^hand$/.test(items[m + 2]?.w ?? '') ? m + 3 : m + 2;
    return {
      places: [corner],
      next: /^(one|block|square|corner)$/.test(items[next]?.w ?? '') ? next + 1 : next,
    };
  }
  if (!ENDS.test(end) && !(end === 'ends' && n === 2)) return undefined;
  m++;
  if (items[m]?.w === 'hand') m++;
  n ??= count(items[m]);
  if (n !== undefined && count(items[m]) !== undefined) m++;
  const noun = items[m]?.w ?? '';
  const named = /^(ones?|blocks?|squares?|end)$/.test(noun);
  if (named) m++;
  else if (n === undefined && !/^(|,|\.|;|\)|:|-|--|is|are|was|and|which|that|has|had)$/.test(noun))
    return undefined;
  // "the end one on the right", "the end one at the left-hand side"
  const side = end === 'end' && n === undefined ? endOnSide(items, m) : undefined;
  if (side) return { places: [UPPER.test(side.word) ? base[0]! : base.at(-1)!], next: side.next };
  if (n === 2 && /^ends?$/.test(end)) return { places: [base[0]!, base.at(-1)!], next: m };
  if (/^end$/.test(end) && /s$/.test(noun) && n === undefined)
    return { places: [base[0]!, base.at(-1)!], next: m };
  const many = n ?? 1;
  const lines = /^(block|square)/.test(noun) ? undefined : linesExceptedFrom(items, k, base);
  if (lines && many < lines.length && !/left|right/.test(end))
    return { places: (UPPER.test(end) ? lines.slice(0, many) : lines.slice(-many)).flat(), next: m };
  return {
    places: UPPER.test(end) ? base.slice(0, many) : base.slice(-many),
    next: m,
  };
}

/** "on the left", "at the right-hand side", behind what is at an end: the side, and where its words end. */
export function endOnSide(items: Item[], k: number): { word: string; next: number } | undefined {
  if (!/^(on|at)$/.test(items[k]?.w ?? '')) return undefined;
  let m = k + 1;
  while (/^(the|its|far)$/.test(items[m]?.w ?? '')) m++;
  const word = /^(left|right|top|bottom)(?: hand)?(?: side| end)?$/.exec(items[m]?.w ?? '')?.[1];
  if (!word) return undefined;
  m++;
  while (/^(hand|side|end)$/.test(items[m]?.w ?? '')) m++;
  return { word, next: m };
}

/** "all the rose chintz ones except bottom left": of those meant, the one that lies furthest to that corner. */
function inCorner(words: string, base: string[]): string | undefined {
  const told = /^(top|upper|bottom|lower) (left|right)$/.exec(words);
  if (!told) return undefined;
  const at = base.map((p) => splitBlock(p)!);
  if (at.some((p) => !p)) return undefined;
  const rows = at.map((p) => p.row);
  const row = /top|upper/.test(told[1]!) ? Math.min(...rows) : Math.max(...rows);
  const along = at.filter((p) => p.row === row).map((p) => p.block);
  const block = told[2] === 'left' ? Math.min(...along) : Math.max(...along);
  return base.find((p) => p === `${row}-${block}`);
}
