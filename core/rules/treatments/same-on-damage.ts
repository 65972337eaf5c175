import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';

const SAME_ON = / (?:same|ditto|likewise)(?: again| thing| treatment)? (?:on|to|for|with|over) (?:the|that) /;

/** "(darned 1-1.) same again on the hole in 2-4": the damage tells where the deed goes on, and is no finding. */
export const sameOnDamage = (state: ReaderState, items: Item[], words: string): Item[] =>
  SAME_ON.test(words) && (state.drafts.at(-1)?.entry.kind ?? state.memory.lastKind) === 'treatment'
    ? items.filter(
        (x, k) =>
          x.finding &&
          /^(?:the|that|in|on|at)$/.test(items[k - 1]?.w ?? '') &&
          /^(?:in|on|at|of)$/.test(items[k + 1]?.w ?? ''),
      )
    : [];
