import { loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { buildPrompt } from '../../server/speech/build-prompt.ts';
import { createLiveListener } from '../../server/speech/live-utterance.ts';
import { createRecogniser } from '../../server/speech/recogniser.ts';
import { createVoiceActivity } from '../../server/speech/voice-activity.ts';
import {
  makeHiss,
  makeHum,
  makeNoise,
  makePinkNoise,
  makeThumps,
  makeTones,
} from '../speech/support/make-sound.ts';
import { MODELS } from '../speech/support/places.ts';

/**
 * `npm run trial:noise`: half an hour of what a workroom sounds like without a word in it, each kind at several levels, into
 * the listener and recogniser as they are. Any text is a fault; exit 1. `--seconds 5` is the short form.
 */
const { values } = parseArgs({ options: { seconds: { type: 'string', default: '45' } } });
const seconds = Number(values.seconds);

const KINDS: Record<string, (level: number) => Float32Array> = {
  'silence, digital': () => new Float32Array(seconds * 16_000),
  'a room (white)': (level) => makeNoise(seconds, level),
  'a fan (pink)': (level) => makePinkNoise(seconds * 16_000, level, 3),
  'steam of the iron': (level) => makeHiss(seconds, level),
  'mains hum': (level) => makeHum(seconds, level),
  'sewing machine, slow': (level) => makeThumps(seconds, level, 5),
  'sewing machine, fast': (level) => makeThumps(seconds, level, 14),
  'music of sorts': (level) => makeTones(seconds, level),
};
/** Peak levels, dB below full scale. */
const LEVELS = [-60, -40, -25, -15, -6];

const recogniser = createRecogniser({ modelsDir: MODELS });
const voiceActivity = createVoiceActivity({ modelsDir: MODELS });
const prompts = {
  'after a note': buildPrompt(
    { rows: 6, blocks: 5, fabrics: ['indigo', 'brown gingham'] },
    'Row two, patched.',
  ),
  'waiting to be called': buildPrompt({ rows: 6, blocks: 5 }, 'Thimble on.'),
};
const began = performance.now();
let faults = 0;
let taken = 0;
for (const [kind, make] of Object.entries(KINDS)) {
  let utterances = 0;
  const words: string[] = [];
  for (const [i, db] of LEVELS.entries()) {
    const context = Object.values(prompts)[i % 2]!;
    const listener = createLiveListener({
      recogniser,
      voiceActivity,
      context: () => context,
      onEvent: (event) => {
        if (event.type !== 'utterance-recognised') return;
        utterances++;
        if (event.recognition.text.trim() !== '') words.push(`${db} dB: ${event.recognition.text}`);
      },
    });
    const sound = make(10 ** (db / 20));
    taken += sound.length / 16_000;
    for (let at = 0; at < sound.length; at += 16_000) {
      listener.push(sound.subarray(at, at + 16_000));
      if (listener.behindS() > 20) await new Promise((done) => setTimeout(done, 100));
    }
    await listener.flush();
    listener.close();
  }
  faults += words.length;
  console.log(
    `${kind.padEnd(22)} ${LEVELS.length} levels  taken for speech ${utterances} times  words: ${words.join(' | ') || 'none'}`,
  );
}
console.log(
  `${(taken / 60).toFixed(1)} minutes, ${faults} with words; ${Math.round((performance.now() - began) / 1000)} s, load ${loadavg()[0]!.toFixed(1)}`,
);
await Promise.all([recogniser.close(), voiceActivity.close()]);
process.exitCode = faults > 0 ? 1 : 0;
