import type { Item } from './item.ts';

/** The words from item `from` up to but without `to`, padded with spaces; all of them where neither is given. */
export const wordsBetween = (items: readonly Item[], from = 0, to = items.length): string =>
  ` ${items
    .slice(Math.max(0, from), Math.max(0, to))
    .map((x) => x.w)
    .join(' ')} `;
