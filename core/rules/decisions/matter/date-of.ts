import { isDeadline } from '../is-deadline.ts';
import type { Part } from './part.ts';

/** The part, with the next where only the two together name the date, if they say when it must be finished. */
export function dateOf(parts: Part[], k: number): Part | undefined {
  const part = parts[k]!;
  if (isDeadline(part.words, part.items)) return part;
  const next = parts[k + 1];
  if (
    !next ||
    (next.topic && next.topic.topic !== 'other') ||
    !/^(,|and|&|--|:|so|but)$/.test(next.joint) ||
    next.taken
  )
    return undefined;
  const both = { ...part, items: [...part.items, ...next.items], words: `${part.words}${next.words}` };
  if (part.topic && part.topic.topic !== 'deadline') return undefined;
  if (!isDeadline(both.words, both.items) || isDeadline(next.words, next.items)) return undefined;
  next.taken = true;
  return both;
}
