import type { QuiltStore } from '../store/quilt-store.ts';
import { UnheardSound } from '../store/unheard-sound.ts';

/** Notes looked through, the last first: what a page sends again is of its last minutes. */
const NOTES = 500;

/**
 * Up to where a stretch of live sound is on the disk already, as a note or as speech not yet heard; ms since 1970, or
 * undefined where nothing of it is. A server that is killed between keeping an utterance and saying so is sent it again.
 */
export async function stretchHeardUntil(store: QuiltStore, stretchId: string): Promise<number | undefined> {
  const unheard = await new UnheardSound(store.fs, store.folder).list();
  const notes = store.log.parts.notes.takeLast(NOTES).toArray();
  const ends = [
    ...unheard.map(({ stretch }) => stretch),
    ...notes.map(({ logged }) => logged.note.audio?.stretch),
  ].flatMap((stretch) => (stretch?.id === stretchId ? [Date.parse(stretch.endAt)] : []));
  return ends.length > 0 ? Math.max(...ends) : undefined;
}
