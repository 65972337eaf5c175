import type { Item } from '../item.ts';

/** The words from item `from` up to but without `to`, padded with spaces. */
export const words = (items: Item[], from: number, to: number): string =>
  ` ${items
    .slice(from, to)
    .map((x) => x.w)
    .join(' ')} `;
