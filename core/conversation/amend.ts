import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { answer } from './answer.ts';
import { correct } from './correct.ts';
import { standingOf } from './standing.ts';

/**
 * The last note's entries with what this note changes: an answer to the question that was asked, or a correction. Gives
 * undefined where the words change nothing that was said, so that the note is read as a new one.
 */
export function amend(state: ReaderState, items: Item[], words: string): Draft[] | undefined {
  const { last } = state.memory;
  if (!last) return undefined;
  return answer(state, last, items, words) ?? correct(state, standingOf(last), items, words);
}
