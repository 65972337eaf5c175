import { effect } from '@preact/signals';
import { playTone } from '../../../audio/tones.ts';
import { hush, localVoice, speak } from '../../../audio/voice.ts';
import { pageLocale } from '../../../words/figure-words.ts';
import { openQuilt } from '../../link/state/open-quilt.ts';
import type { Latest, QuiltLink } from '../../link/state/quilt-link.ts';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { ear } from './listening.ts';

const QUIET_MS = 350;
const PATIENCE_MS = 8000;

/** What the tool says after a note: the answer to a question, else what it asks, else its reply. */
export function replyWords(latest: Latest): string {
  if (latest.answer) return latest.answer.text;
  const { reading } = latest;
  if (!reading) return '';
  return reading.ask && !reading.reply.includes(reading.ask.question)
    ? `${reading.reply} ${reading.ask.question}`.trim()
    : reading.reply;
}

let answered: Latest | null = null;
let turn = 0;

/** Answers each note aloud, or by a tone where there is no voice on this machine; never while she talks. */
export function startAnswering(): () => void {
  return effect(() => {
    const link = openQuilt.value;
    const latest = link?.latest.value ?? null;
    if (!link || !latest || latest === answered) return;
    answered = latest;
    void answer(link, latest, ++turn);
  });
}

async function answer(link: QuiltLink, latest: Latest, mine: number): Promise<void> {
  const settings = machineSettings.peek() ?? UNTIL_KNOWN;
  if (latest.reading?.act === 'aside' && !latest.reading.answers) return;
  const words = replyWords(latest);
  const voice = settings.spokenReplies ? localVoice(pageLocale()) : null;
  await untilQuiet(link);
  // A newer note has its own answer; the old one is on the screen.
  if (mine !== turn) return;
  if (voice && words) {
    hush();
    link.say({ type: 'speaking', on: true });
    const watching = setInterval(() => {
      if (talking(link)) hush();
    }, 100);
    await speak(words, voice);
    clearInterval(watching);
    link.say({ type: 'speaking', on: false });
  } else if (settings.tones) playTone(latest.reading?.ask ? 'ask' : 'noted');
}

/** With a held key down, or words coming in, she is talking. */
const talking = (link: QuiltLink): boolean => {
  const held = (machineSettings.peek() ?? UNTIL_KNOWN).listening === 'held';
  return (held && ear.peek() === 'open') || link.partial.peek() !== '';
};

async function untilQuiet(link: QuiltLink): Promise<void> {
  const start = Date.now();
  let quietSince = Date.now();
  while (Date.now() - start < PATIENCE_MS) {
    if (talking(link) || link.level.peek().speech) quietSince = Date.now();
    else if (Date.now() - quietSince >= QUIET_MS) return;
    await new Promise((resolve) => setTimeout(resolve, 60));
  }
}
