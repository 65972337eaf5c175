import type { NoteAudio, Reading } from '../shared/note.ts';
import type { Command } from '../shared/wire.ts';
import type { OtherHearing } from './speech/recogniser.ts';
import type { QuiltStore } from './store/quilt-store.ts';

/** What a command came to, once it is on the disk. */
export type Outcome = {
  seq: number;
  /** All was so already. */
  unchanged?: true;
  noteId?: string;
  reading?: Reading;
  answer?: { text: string; working: string[] };
};

export type Surroundings = {
  /** ISO 8601; the moment now. */
  now: string;
  idleMin: number;
  /** For a note that was heard: where its words came from. */
  heard?: {
    source: 'spoken' | 'recording';
    audio: NoteAudio;
    /** What else may have been said; the one that makes the most sense becomes the note. */
    others?: OtherHearing[];
  };
};

/** The reader takes a second of processor time to load, so the first page does not wait for it. Loads it once. */
export const loadReader = () => import('./carry-out-command.ts');

/** Carries out one command on one quilt. Throws `Refusal` and `DiskTrouble`. */
export async function runCommand(
  store: QuiltStore,
  command: Command,
  surroundings: Surroundings,
): Promise<Outcome> {
  const { carryOutCommand } = await loadReader();
  return carryOutCommand(store, command, surroundings);
}
