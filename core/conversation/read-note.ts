import type { Conversation, Reading } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

/** Goes up whenever a rule changes what some note means; old notes can then be read anew. */
export const RULES_VERSION = '1';

/** A conversation in which nothing has been said. */
export const SILENCE: Conversation = {};

/** What the reader is given beside the words. */
export type Circumstances = {
  /** When it was said: ISO 8601 with the offset of the quilt's place. */
  at: string;
  quilt: QuiltGrid & { taught?: Record<string, string> };
  /** What has been said before, as the previous call returned it. */
  conversation: Conversation;
};

/**
 * Reads one note: words in, structured entries out. Pure: the same words in the same circumstances
 * always give the same reading. Never throws; words that mean nothing are kept as a remark.
 */
export function readNote(
  _text: string,
  circumstances: Circumstances,
): { reading: Reading; conversation: Conversation } {
  return {
    reading: {
      act: 'log',
      entries: [{ entry: { kind: 'remark' }, origins: {} }],
      ask: null,
      reply: 'Noted.',
    },
    conversation: circumstances.conversation,
  };
}
