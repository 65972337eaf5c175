import type { Item } from './item.ts';

/** The words of the item at an index, and nothing before the first and behind the last. */
export const itemWord = (items: readonly Item[], k: number): string => items[k]?.w ?? '';
