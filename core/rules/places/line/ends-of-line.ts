import { countUp } from '../grid.ts';
import type { Counting } from './axis-of.ts';

type End = 'start' | 'end' | 'middle' | 'both' | 'inner';

/** Words for an end of a line, and the kind of counting that they fit: rows are counted downwards, blocks in a row across. */
export const ENDS = new Map<string, { end: End; way: Counting | 'any' }>(
  Object.entries({
    top: { end: 'start', way: 'down' },
    topmost: { end: 'start', way: 'down' },
    upper: { end: 'start', way: 'down' },
    uppermost: { end: 'start', way: 'down' },
    highest: { end: 'start', way: 'down' },
    head: { end: 'start', way: 'down' },
    bottom: { end: 'end', way: 'down' },
    btm: { end: 'end', way: 'down' },
    bottommost: { end: 'end', way: 'down' },
    lower: { end: 'end', way: 'down' },
    lowest: { end: 'end', way: 'down' },
    lowermost: { end: 'end', way: 'down' },
    left: { end: 'start', way: 'across' },
    leftmost: { end: 'start', way: 'across' },
    lh: { end: 'start', way: 'across' },
    right: { end: 'end', way: 'across' },
    rightmost: { end: 'end', way: 'across' },
    rh: { end: 'end', way: 'across' },
    first: { end: 'start', way: 'any' },
    '1st': { end: 'start', way: 'any' },
    opening: { end: 'start', way: 'any' },
    start: { end: 'start', way: 'any' },
    beginning: { end: 'start', way: 'any' },
    last: { end: 'end', way: 'any' },
    final: { end: 'end', way: 'any' },
    end: { end: 'end', way: 'any' },
    endmost: { end: 'end', way: 'any' },
    middle: { end: 'middle', way: 'any' },
    centre: { end: 'middle', way: 'any' },
    center: { end: 'middle', way: 'any' },
    central: { end: 'middle', way: 'any' },
    mid: { end: 'middle', way: 'any' },
    outer: { end: 'both', way: 'any' },
    outside: { end: 'both', way: 'any' },
    outermost: { end: 'both', way: 'any' },
    inner: { end: 'inner', way: 'any' },
    inside: { end: 'inner', way: 'any' },
  } as const),
);

export const countedAtEnd = (end: End, count: number, total: number): number[] => {
  if (count > total) return [];
  if (end === 'start') return countUp(1, count);
  if (end === 'end') return countUp(total - count + 1, total);
  if (end === 'both') return total > 1 ? [1, total] : [1];
  if (end === 'inner') return total > 2 ? countUp(2, total - 1) : [];
  // the middle of an even number is two
  const n = count === 1 && total % 2 === 0 ? 0 : count;
  return n && (total - n) % 2 === 0 ? countUp((total - n) / 2 + 1, (total + n) / 2) : [];
};

/** Does an end told as "top" or "left" fit counting along this axis? Along a row it goes across, from row to row down. */
export const fits = (way: Counting | 'any', counting: Counting): boolean => way === 'any' || way === counting;
