import type { Item } from './item.ts';

const FUNCTION_WORDS = new Set(
  "'s 's 're 've 'll 'd i you he she we they it its is are was were be been has have had do does did will would can could and or but so then than if when while where which who what that as at by for from in into on onto off out over under up down with without to all some any no not n't just now here there back about after before behind between through round again too very way time".split(
    ' ',
  ),
);
/** "that coffee ring", "the three-cornered tear": a word that only says more of the thing. */
export const isPlainWord = (item: Item): boolean =>
  ((item.token.kind === 'word' && !FUNCTION_WORDS.has(item.w)) || item.w === '-') &&
  !item.place &&
  !item.part &&
  !item.finding &&
  !item.fail &&
  !item.seam &&
  !item.action &&
  !item.stitch &&
  !item.task &&
  !item.topic &&
  !item.clock &&
  !item.span &&
  !item.duration;
