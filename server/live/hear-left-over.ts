import { contextOf, type Hearing, lastWords } from '../hearing.ts';
import { decodeWav } from '../store/encode-wav.ts';
import type { Library } from '../store/library.ts';
import type { QuiltStore } from '../store/quilt-store.ts';
import { UnheardSound } from '../store/unheard-sound.ts';
import { takeSpokenNote } from './take-spoken-note.ts';

/** The recogniser takes at most this much in one piece. */
const MOST_SAMPLES = 30 * 16_000;

/**
 * Hears the speech of a quilt that was on the disk but not yet in its log: after a crash, or when the
 * recogniser could not work. Stops at the first that still can't be heard. Returns how many are notes now.
 */
export async function hearLeftOver(store: QuiltStore, library: Library, hearing: Hearing): Promise<number> {
  const unheard = new UnheardSound(store.fs, store.folder);
  let taken = 0;
  for (const sound of await unheard.list()) {
    if (store.log.note(sound.id)) {
      await unheard.settle(sound.id);
      continue;
    }
    let pcm: Float32Array;
    try {
      pcm = decodeWav(await unheard.sound(sound.id));
    } catch {
      await unheard.settle(sound.id);
      continue;
    }
    try {
      const recognition = await hearing.recogniser.recognise(
        pcm.subarray(0, MOST_SAMPLES),
        contextOf(store.log, lastWords(store.log)),
        { priority: 'recording' },
      );
      if (recognition.text.trim() === '') await unheard.discard(sound.id);
      else {
        await takeSpokenNote(store, sound, recognition, library.settings.data);
        taken++;
      }
    } catch {
      return taken;
    }
  }
  return taken;
}
