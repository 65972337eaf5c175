import { fileURLToPath } from 'node:url';
import { AudioFileError } from '../speech/audio-file-error.ts';
import { buildPrompt } from '../speech/build-prompt.ts';
import { ModelFileError } from '../speech/model-files.ts';
import { createRecogniser, RecogniserError } from '../speech/recogniser.ts';
import { createRecordingReader } from '../speech/recording-reader.ts';
import { transcribeRecording } from '../speech/transcribe-recording.ts';

/**
 * `npm run --silent transcribe -- FILE…`: one JSON line for each utterance (`file`, `start_s`, `end_s`, `text`, `confidence`) as soon as it
 * is ready; progress on standard error. Exit 0: all read. 1: a file could not be read, the others were. 2: nothing to do. 3:
 * the recogniser cannot work. 130: interrupted.
 */
const files = process.argv.slice(2).filter((argument) => argument !== '--');
if (files.length === 0) {
  console.error('Expected one or more audio files: npm run --silent transcribe -- FILE…');
  process.exit(2);
}
const modelsDir = fileURLToPath(new URL('../../models', import.meta.url));
const recogniser = createRecogniser({ modelsDir });
const reader = createRecordingReader(modelsDir);
const stop = new AbortController();
process.once('SIGINT', () => stop.abort());
process.once('SIGTERM', () => stop.abort());
// A reader that has had enough (`| head`) is no fault.
process.stdout.on('error', () => stop.abort());

const isTerminal = process.stderr.isTTY;
let told = 0;
function tell(line: string, { last = false } = {}) {
  // On a terminal one line is kept up to date; in a file one line every ten seconds is enough.
  if (isTerminal) process.stderr.write(`\r\x1b[K${line}${last ? '\n' : ''}`);
  else if (last || Date.now() - told > 10_000) {
    told = Date.now();
    process.stderr.write(`${line}\n`);
  }
}

let exitCode = 0;
for (const file of files) {
  const began = performance.now();
  let utterances = 0;
  try {
    const reading = transcribeRecording(file, {
      recogniser,
      modelsDir,
      reader,
      context: buildPrompt(undefined),
      signal: stop.signal,
      onProgress: ({ share, doneS }) => tell(`${file}: ${Math.floor(share * 100)} %, ${clock(doneS)} heard`),
    });
    for (;;) {
      const next = await reading.next();
      if (next.done) {
        const { seconds, isCutShort } = next.value;
        const took = (performance.now() - began) / 1000;
        tell(
          `${file}: ${clock(seconds)} of sound, ${utterances} ${utterances === 1 ? 'utterance' : 'utterances'}, in ${took.toFixed(1)} s${isCutShort ? '; the file is cut short, all that is there was read' : ''}`,
          { last: true },
        );
        break;
      }
      utterances++;
      const { startS, endS, text, confidence } = next.value;
      const line = {
        file,
        start_s: startS,
        end_s: endS,
        text,
        confidence: Math.round(confidence * 1000) / 1000,
      };
      process.stdout.write(`${JSON.stringify(line)}\n`);
    }
  } catch (error) {
    if (stop.signal.aborted) {
      tell(`${file}: stopped; the lines already printed stand.`, { last: true });
      exitCode = 130;
      break;
    }
    if (error instanceof AudioFileError) {
      tell(error.message, { last: true });
      exitCode = 1;
    } else if (error instanceof ModelFileError || error instanceof RecogniserError) {
      tell(error.message, { last: true });
      exitCode = 3;
      break;
    } else throw error;
  }
}
await reader.close();
await recogniser.close();
process.exitCode = exitCode;

function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  const parts = [Math.floor(whole / 60) % 60, whole % 60].map((part) => String(part).padStart(2, '0'));
  return `${Math.floor(whole / 3600)}:${parts.join(':')}`;
}
