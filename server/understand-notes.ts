import { resolve } from 'node:path';
import { z } from 'zod';
import { likeliestSaid } from '../core/conversation/likeliest-said.ts';
import { readNote, SILENCE } from '../core/conversation/read-note.ts';
import type { Entry } from '../shared/entry.ts';
import { type Conversation, Instant, type Reading } from '../shared/note.ts';
import { LIMITS, QuiltGrid } from '../shared/quilt.ts';
import type { HeardFile } from './speech/hear-file.ts';

/** One line in: a note of a thread, in words or as a file of sound. */
const ContractNote = z
  .object({
    id: z.string(),
    thread: z.string().default(''),
    at: Instant.refine((at) => !Number.isNaN(Date.parse(at)), 'there is no such moment'),
    text: z.string().max(LIMITS.noteChars).optional(),
    audio: z.string().min(1).optional(),
    quilt: QuiltGrid.optional(),
  })
  .refine((note) => note.text !== undefined || note.audio !== undefined, {
    path: ['text'],
    message: 'a note has text or audio',
  });

/** One line out. Only the slots of the contract: no origins, and arguments of a query beside it. */
export type Understood = {
  id: string;
  act: Reading['act'];
  entries: Entry[];
  ask: Reading['ask'];
  reply: string;
  query?: Reading['query'];
  heard?: string;
} & NonNullable<Reading['arguments']>;

type Thread = { quilt: QuiltGrid; conversation: Conversation; lastNote: string | undefined };

/** Hears one file; given so that no speech model is loaded unless a line asks for it. */
export type Hear = (
  path: string,
  quilt: QuiltGrid,
  lastNote: string | undefined,
) => Promise<Pick<HeardFile, 'heard' | 'others'>>;

/**
 * Understands notes line by line, by the contract: JSON in, JSON out, in order. Notes of one thread
 * share the conversation and the quilt. A line that is not a valid note gives `{"id":…,"error":…}`.
 * Paths of sound are taken from `folder`.
 */
export async function* understandNotes(
  lines: AsyncIterable<string>,
  { hear, folder }: { hear: Hear; folder: string },
): AsyncGenerator<string> {
  const threads = new Map<string, Thread>();
  for await (const line of lines) {
    if (line.trim() === '') continue;
    let id: unknown = null;
    try {
      const value: unknown = JSON.parse(line);
      id = (value as { id?: unknown } | null)?.id ?? null;
      const note = readContractNote(value);
      const known = threads.get(note.thread);
      const quilt = note.quilt ?? known?.quilt;
      if (!quilt)
        throw new Error("quilt: the first line of a thread has to give the quilt's rows and blocks");
      const thread = known ?? { quilt, conversation: SILENCE, lastNote: undefined };
      thread.quilt = quilt;
      threads.set(note.thread, thread);
      const read = (text: string) =>
        readNote(text, {
          at: note.at,
          quilt,
          conversation: thread.conversation,
          spoken: note.text === undefined,
        });
      let text = note.text;
      if (text === undefined) {
        const { heard, others } = await hear(resolve(folder, note.audio!), quilt, thread.lastNote);
        text = likeliestSaid([{ text: heard, behind: 0 }, ...others], (words) => read(words).reading).text;
      }
      const { reading, conversation } = read(text);
      thread.conversation = conversation;
      thread.lastNote = text;
      const understood: Understood = {
        id: note.id,
        act: reading.act,
        entries: reading.entries.map((read) => read.entry),
        ask: reading.ask,
        reply: reading.reply,
        ...(reading.query === undefined ? {} : { query: reading.query }),
        ...reading.arguments,
        ...(note.text === undefined ? { heard: text } : {}),
      };
      yield JSON.stringify(understood);
    } catch (error) {
      yield JSON.stringify({ id, error: errorWords(error) });
    }
  }
}

function readContractNote(value: unknown): z.infer<typeof ContractNote> {
  const parsed = ContractNote.safeParse(value);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new Error(`${issue?.path.join('.') || 'note'}: ${issue?.message ?? 'not a valid note'}`);
}

const errorWords = (error: unknown): string =>
  error instanceof SyntaxError ? `not valid JSON: ${error.message}` : (error as Error).message;
