import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { dateOf, findDay } from '../rules/times/find-day.ts';
import { findImpossibleDay } from '../rules/times/find-impossible-day.ts';
import { type LastNote, put, standingOf } from './standing.ts';

const SMALL = /\b(?:no|sorry|i|mean|meant|it|was|'s|on|the|that|oh|um|er|uh|actually|make|of)\b|[.,!?']/g;
const SLOTS = ['time', 'start', 'end'] as const;

/**
 * "The tenth of March", after work was told for a day that the calendar has not got: the same times on that day. Undefined
 * where nothing of the kind was asked, or more is said than a day.
 */
export function answerDay(
  state: ReaderState,
  last: LastNote,
  items: Item[],
  words: string,
): Draft[] | undefined {
  if (last.ask !== 'time' || !findImpossibleDay(last.said, state.local)) return undefined;
  const day = findDay(words, state.local);
  if (!day || words.replace(day.words, '').replace(SMALL, '').trim() !== '') return undefined;
  const standing = standingOf(last);
  for (const { draft, was } of standing) {
    if (was.kind !== 'work') continue;
    const first = SLOTS.flatMap((slot) => was[slot] ?? []).sort()[0];
    if (first === undefined) continue;
    for (const slot of SLOTS) {
      const time = was[slot];
      if (time === undefined) continue;
      // What ran on past midnight still does.
      const later = (Date.parse(`${time.slice(0, 10)}Z`) - Date.parse(`${first.slice(0, 10)}Z`)) / 86_400_000;
      const moved = new Date(Date.parse(`${dateOf(day)}Z`) + later * 86_400_000).toISOString().slice(0, 10);
      put(draft, slot, `${moved}${time.slice(10)}`, 'answer.day', items);
    }
  }
  return standing.map((s) => s.draft);
}
