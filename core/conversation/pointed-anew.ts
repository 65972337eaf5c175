import type { Memory } from './memory.ts';
import { placesOf } from './standing.ts';

/** Where a block lies from another: each word beside those that lead back. */
const OPPOSITE: [RegExp, RegExp][] = [
  [/\b(?:above|over|up from)\b/, /\b(?:below|beneath|under|underneath|down from)\b/],
  [/\bleft\b/, /\bright\b/],
];
const NEIGHBOUR =
  /\b(?:above|below|beneath|under|underneath|up from|down from|(?:to|on) (?:the|its) (?:left|right)|(?:left|right) of|next|before|after|beside|along)\b/;
const MENDS =
  /^(?:(?:oh|ah|um|uh|er|and|but|,) )*(?:no|nope|nah|not|sorry|wait|hang on|hold on|actually|or rather|rather|i mean|i meant|make that|oops|whoops|correction)\b|\b(?:i mean|i meant|sorry|rather|correction)[ .!]*$/;
const MOST_WORDS = 14;

/**
 * From where a neighbour is counted. After "the one above wants the same" a mend, "no, the one below", is counted from where the first was
 * counted, and so is "and the one below": what is wrong, or stands opposite, is nowhere to count from. "The one below that" goes on from what was told last.
 */
export function pointedFrom(memory: Memory, words: string): Pick<Memory, 'focus' | 'earlier'> {
  const { last, before, focus, earlier } = memory;
  const here = { focus, earlier };
  if (!last || before?.focus.length !== 1 || focus.length !== 1 || before.focus[0] === focus[0]) return here;
  if (words.split(' ').length > MOST_WORDS || !NEIGHBOUR.test(words)) return here;
  if (
    /\d|\b(?:row|rows|column|columns|block) |\b(?:below|above|under|of|from|after|before|beside) (?:that|this|the one)\b/.test(
      words,
    )
  )
    return here;
  const pointed = last.entries.flatMap(({ entry, origins }) => {
    const at = origins['places'];
    return placesOf(entry).length && at ? [at.words ?? last.said.slice(at.from, at.to)] : [];
  });
  const [told] = pointed.map((w) => w.toLowerCase());
  if (!told || new Set(pointed).size > 1 || !NEIGHBOUR.test(told)) return here;
  if (last.entries.some(({ entry }) => placesOf(entry).some((p) => p !== focus[0]))) return here;
  const leadsBack = OPPOSITE.some(
    ([a, b]) => (a.test(told) && b.test(words)) || (b.test(told) && a.test(words)),
  );
  return leadsBack || MENDS.test(words) ? { focus: [...before.focus], earlier: before.earlier } : here;
}
