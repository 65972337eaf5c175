import type { Settings } from '../../shared/settings.ts';
import { type Outcome, runCommand } from '../run-command.ts';
import type { Recognition } from '../speech/recogniser.ts';
import type { QuiltStore } from '../store/quilt-store.ts';
import { type Unheard, UnheardSound } from '../store/unheard-sound.ts';

/**
 * Makes a note of speech whose sound is already on the disk and which has been recognised. Returns when
 * the note is on the disk too.
 */
export async function takeSpokenNote(
  store: QuiltStore,
  sound: Unheard,
  recognition: Pick<Recognition, 'text' | 'words' | 'confidence' | 'others'>,
  settings: Settings,
): Promise<Outcome> {
  const unheard = new UnheardSound(store.fs, store.folder);
  const file = UnheardSound.file(sound.id);
  const outcome = await runCommand(
    store,
    { type: 'take-note', clientId: sound.id, text: recognition.text, at: sound.at },
    {
      now: sound.at,
      idleMin: settings.idleMin,
      heard: {
        source: 'spoken',
        others: recognition.others,
        audio: {
          file,
          startS: 0,
          endS: sound.seconds,
          confidence: Math.max(0, Math.min(1, recognition.confidence)),
          words: recognition.words,
          ...(sound.stretch ? { stretch: sound.stretch } : {}),
        },
      },
    },
  );
  if (settings.keepAudio === 'none') {
    await store.commit(() => ({ events: [{ type: 'audio-removed', files: [file] }] }));
    await unheard.discard(sound.id);
  } else await unheard.settle(sound.id);
  return outcome;
}
