import type { Conversation } from '../../shared/note.ts';
import type { Read } from './in-two.ts';
import { recall } from './memory.ts';
import { movedBy } from './moved-by.ts';

type Note = {
  text: string;
  before: Conversation;
  whole: Read;
  read: (part: string, conversation: Conversation) => Read;
};

/** The end of a sentence, and no point of a number. */
const STOP = /[.;\n]\s+(?=\S)/g;
/** A figure and a word that it may belong to. */
const FIGURE =
  /\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|fifty)\b/i;

/**
 * "betweens 6.10 not 5.10. reels: 3", "width 1570 not 1580. length: 1930": a mend of the last note in each sentence. They are read one
 * after the other, where each changes one figure of what stands and no other; undefined where they are not of that kind.
 */
export function mendsInTurn({ text, before, whole, read }: Note): Read | undefined {
  const { last } = recall(before);
  if (whole.reading.act !== 'amend' || !last || last.ask || text.length > 160) return undefined;
  const parts: { from: number; words: string }[] = [];
  let from = 0;
  for (const stop of text.matchAll(STOP)) {
    parts.push({ from, words: text.slice(from, stop.index + 1) });
    from = stop.index + stop[0].length;
  }
  parts.push({ from, words: text.slice(from) });
  if (parts.length < 2 || parts.length > 4 || parts.some(({ words }) => !FIGURE.test(words)))
    return undefined;
  let stands = last.entries.map(({ entry }) => entry as Record<string, unknown>);
  let conversation = before;
  const changed: string[] = [];
  let mended: Read | undefined;
  for (const part of parts) {
    const next = read(part.words, conversation);
    const { act, entries, ask } = next.reading;
    if (act !== 'amend' || ask || entries.length !== stands.length) return undefined;
    const now = entries.map(({ entry }) => entry as Record<string, unknown>);
    const slots = now.flatMap((e, k) => changes(stands[k]!, e).map((slot) => `${k} ${slot}`));
    if (slots.length !== 1 || changed.includes(slots[0]!) || !OF_FIGURE.test(slots[0]!)) return undefined;
    changed.push(slots[0]!);
    const touched = Number.parseInt(slots[0]!, 10);
    const own = entries.map((e, k) => (k === touched ? { ...e, origins: movedBy(e.origins, part.from) } : e));
    mended = { reading: { ...next.reading, entries: own }, conversation: next.conversation };
    stands = now;
    conversation = next.conversation;
  }
  return mended;
}

const OF_FIGURE = / (?:quantity|cost|value|minutes|start|end|time)$/;

const changes = (a: Record<string, unknown>, b: Record<string, unknown>): string[] =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(
    (slot) => JSON.stringify(a[slot]) !== JSON.stringify(b[slot]),
  );
