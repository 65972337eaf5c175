import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { buildPrompt } from '../../server/speech/build-prompt.ts';
import { createLiveListener } from '../../server/speech/live-utterance.ts';
import { createRecogniser, type Recogniser } from '../../server/speech/recogniser.ts';
import { transcribeRecording } from '../../server/speech/transcribe-recording.ts';
import { createVoiceActivity, type VoiceActivity } from '../../server/speech/voice-activity.ts';
import { readWav } from '../speech/support/read-wav.ts';
import { writeWav } from '../speech/support/write-wav.ts';

type Row = { name: string; value: string; target: string };

const MODELS = fileURLToPath(new URL('../../models', import.meta.url));
const CLIPS = fileURLToPath(new URL('../fixtures/clips', import.meta.url));
const CLIP_NAMES = [
  'jfk.wav',
  'librispeech-1272-141231-0002.wav',
  'ljspeech-LJ002-0020.wav',
  'ljspeech-LJ002-0035.wav',
  'ami-ES2011a-40s-46s.wav',
  'voices-sp0307-sg0042.wav',
];
const RATE = 16_000;
const HOUR_S = 3600;
const QUILT = buildPrompt(
  { rows: 7, blocks: 5, fabrics: ['brown gingham', 'indigo'] },
  'Row two, block one, patched the hole.',
);

/**
 * Speed and memory of speech with the real model and real clips. Times hold for the machine they were taken on; shares of
 * real time carry over better. About five minutes, most of it the hour's recording and the live utterances.
 */
export async function benchSpeech(): Promise<Row[]> {
  const rows: Row[] = [];
  const recogniser = createRecogniser({ modelsDir: MODELS });
  const voiceActivity = createVoiceActivity({ modelsDir: MODELS });
  try {
    const began = performance.now();
    await recogniser.ready();
    rows.push({ name: 'recogniser ready', value: seconds(performance.now() - began), target: '≤ 4 s' });
    await voiceActivity.ready();

    rows.push(...(await benchClips(recogniser)));
    rows.push(...(await benchLive(recogniser, voiceActivity)));
    rows.push(...(await benchRecording(recogniser, voiceActivity)));
  } finally {
    await Promise.all([recogniser.close(), voiceActivity.close()]);
  }
  return rows;
}

async function benchClips(recogniser: Recogniser): Promise<Row[]> {
  const delay = monitorEventLoopDelay({ resolution: 5 });
  const times: number[] = [];
  let sound = 0;
  delay.enable();
  for (let round = 0; round < 3; round++) {
    for (const name of CLIP_NAMES) {
      const pcm = readWav(join(CLIPS, name));
      const { ms } = await recogniser.recognise(pcm, QUILT, { priority: 'live' });
      times.push(ms);
      sound += pcm.length / RATE;
    }
  }
  delay.disable();
  const total = times.reduce((sum, each) => sum + each, 0) / 1000;
  return [
    {
      name: 'recognition, share of real time (6 clips, with prompt)',
      value: (total / sound).toFixed(3),
      target: '≤ 0.1',
    },
    {
      name: 'recognition per utterance, p50 / p95',
      value: `${seconds(share(times, 0.5))} / ${seconds(share(times, 0.95))}`,
      target: '',
    },
    {
      name: 'event loop delay while recognising, p99',
      value: `${(delay.percentile(99) / 1e6).toFixed(1)} ms`,
      target: '≤ 50 ms',
    },
  ];
}

/** Says one clip after another at the pace of a microphone and times what the user would see. */
async function benchLive(recogniser: Recogniser, voiceActivity: VoiceActivity): Promise<Row[]> {
  const toEntry: number[] = [];
  const toWords: number[] = [];
  const afterPause: number[] = [];
  for (let round = 0; round < 2; round++) {
    for (const name of CLIP_NAMES.slice(1)) {
      const pcm = readWav(join(CLIPS, name));
      const sound = new Float32Array(RATE * 0.5 + pcm.length + RATE * 4);
      sound.set(pcm, RATE * 0.5);
      const began = performance.now();
      const soundingAt = (atS: number) => began + atS * 1000;
      let sawWords = false;
      const listener = createLiveListener({
        recogniser,
        voiceActivity,
        context: () => QUILT,
        settings: { endPauseMs: 600, adaptPause: false },
        onEvent: (event) => {
          const now = performance.now();
          if (event.type === 'words-heard' && !sawWords) {
            sawWords = true;
            toWords.push(now - soundingAt(event.startS + 0.4));
          } else if (event.type === 'utterance-recognised') {
            // The utterance keeps 0.2 s after the last speech.
            toEntry.push(now - soundingAt(event.endS - 0.2));
            afterPause.push(event.waitedMs);
          }
        },
      });
      for (let at = 0; at < sound.length; at += 640) {
        const wait = soundingAt(at / RATE) - performance.now();
        if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
        listener.push(sound.subarray(at, at + 640));
      }
      await listener.flush();
      listener.close();
    }
  }
  return [
    {
      name: `end of speech → words of the note (600 ms pause included, ${toEntry.length} utterances), p50 / p95`,
      value: `${seconds(share(toEntry, 0.5))} / ${seconds(share(toEntry, 0.95))}`,
      target: '≤ 1.0 s / 2.0 s',
    },
    { name: 'of that after the pause, p50', value: seconds(share(afterPause, 0.5)), target: '' },
    {
      name: 'start of speech → first words shown, p50',
      value: seconds(share(toWords, 0.5)),
      target: '≤ 1.2 s',
    },
  ];
}

async function benchRecording(recogniser: Recogniser, voiceActivity: VoiceActivity): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  try {
    // An hour: the clips over and over with two seconds between, as a person at work speaks and stops.
    const clips = [...CLIP_NAMES, 'two-cities.wav'].map((name) => readWav(join(CLIPS, name)));
    const recording = new Float32Array(HOUR_S * RATE);
    for (let at = RATE, i = 0; at < recording.length; i++) {
      const clip = clips[i % clips.length]!;
      recording.set(clip.subarray(0, recording.length - at), at);
      at += clip.length + 2 * RATE;
    }
    const path = join(folder, 'an-hour.wav');
    writeWav(path, recording);
    const memory: number[] = [];
    const sample = setInterval(
      () => memory.push(proportionalMemoryMb([recogniser.processId(), voiceActivity.processId()])),
      1000,
    );
    const began = performance.now();
    let utterances = 0;
    for await (const _ of transcribeRecording(path, { recogniser, modelsDir: MODELS, context: QUILT }))
      utterances++;
    const took = (performance.now() - began) / 1000;
    clearInterval(sample);
    const half = Math.floor(memory.length / 2);
    const first = Math.max(...memory.slice(0, half));
    const second = Math.max(...memory.slice(half));
    return [
      {
        name: `recording of an hour (${utterances} utterances), share of its length`,
        value: (took / HOUR_S).toFixed(3),
        target: '≤ 0.06',
      },
      {
        name: 'memory of the recogniser and the voice-activity process, highest in first / second half',
        value: Number.isFinite(first)
          ? `${first.toFixed(0)} / ${second.toFixed(0)} MB`
          : 'only told on Linux',
        target: '≤ 900 MB, flat',
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Memory of processes with what they share counted once between them, MB; NaN where the system does not tell. */
function proportionalMemoryMb(ids: (number | undefined)[]): number {
  let kilobytes = 0;
  for (const id of ids) {
    try {
      kilobytes += Number(/^Pss:\s+(\d+)/m.exec(readFileSync(`/proc/${id}/smaps_rollup`, 'utf8'))?.[1]);
    } catch {
      return Number.NaN;
    }
  }
  return kilobytes / 1024;
}

function share(values: number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(2)} s`;
}
