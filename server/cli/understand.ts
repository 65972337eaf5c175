import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import type { QuiltGrid } from '../../shared/quilt.ts';
import type { HeardFile } from '../speech/hear-file.ts';
import type { Recogniser } from '../speech/recogniser.ts';
import type { RecordingReader } from '../speech/recording-reader.ts';
import { understandNotes } from '../understand-notes.ts';

/**
 * `npm run --silent understand < notes.jsonl > entries.jsonl`: one note a line in, how it was understood
 * a line out, in order. The speech model is loaded with the first line that has `audio`, not before.
 */
const modelsDir = fileURLToPath(new URL('../../models', import.meta.url));
let recogniser: Recogniser | undefined;
let reader: RecordingReader | undefined;

async function hear(path: string, quilt: QuiltGrid, lastNote: string | undefined): Promise<HeardFile> {
  const [{ createRecogniser }, { createRecordingReader }, { hearFile }, { buildPrompt }] = await Promise.all([
    import('../speech/recogniser.ts'),
    import('../speech/recording-reader.ts'),
    import('../speech/hear-file.ts'),
    import('../speech/build-prompt.ts'),
  ]);
  recogniser ??= createRecogniser({ modelsDir });
  // Loads while the reader starts.
  recogniser.ready().catch(() => {});
  reader ??= createRecordingReader(modelsDir);
  return hearFile(path, buildPrompt(quilt, lastNote), { recogniser, modelsDir, reader });
}

// A reader that has had enough (`| head`) is no fault.
process.stdout.on('error', () => process.exit(0));
const lines = createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY });
// npm runs the command in the project's folder; paths in the notes are meant from where it was called.
const folder = process.env.INIT_CWD ?? process.cwd();
for await (const line of understandNotes(lines, { hear, folder })) {
  if (!process.stdout.write(`${line}\n`)) await once(process.stdout, 'drain');
}
await reader?.close();
await recogniser?.close();
