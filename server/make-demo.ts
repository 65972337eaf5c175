import { existsSync, readFileSync } from 'node:fs';
import { cp, mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { Instant } from '../shared/note.ts';
import { QuiltDetails } from '../shared/quilt.ts';
import { runCommand } from './run-command.ts';
import { nodeFileSystem } from './store/file-system.ts';
import { Library } from './store/library.ts';

const DEMO = fileURLToPath(new URL('./demo', import.meta.url));
const DemoFigures = z.record(z.string(), z.unknown());
const DemoNote = z.object({ at: Instant, text: z.string().min(1), audio: z.string().optional() });

/**
 * Makes a throw-away data folder with the demo quilt: its notes go through the same reading and the same
 * journal as any. Returns the folder.
 */
export async function makeDemo(source: string = DEMO): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'quiltside-demo-'));
  const details = QuiltDetails.parse(JSON.parse(await readFile(join(source, 'quilt.json'), 'utf8')));
  const lines = (await readFile(join(source, 'notes.jsonl'), 'utf8'))
    .split('\n')
    .filter((line) => line.trim() !== '');
  const library = await Library.open(folder, nodeFileSystem);
  try {
    const store = await library.makeQuilt(details);
    const { idleMin } = library.settings.data;
    for (const kind of ['photos', 'audio']) {
      if (existsSync(join(source, kind)))
        await cp(join(source, kind), join(store.folder, kind), { recursive: true });
    }
    const taken = lines.map(async (line, i) => {
      const { at, text, audio } = DemoNote.parse(JSON.parse(line));
      const seconds = audio === undefined ? 0 : flacSeconds(join(source, audio));
      // Not awaited one by one: they share the writes, and keep their order.
      return runCommand(
        store,
        { type: 'take-note', clientId: `demo-${i + 1}`, text, at },
        {
          now: at,
          idleMin,
          ...(audio === undefined
            ? {}
            : { heard: { source: 'spoken', audio: { file: basename(audio), startS: 0, endS: seconds } } }),
        },
      );
    });
    await Promise.all(taken);
    // Her own figures, as she would set them on the page of the estimate.
    const figures = DemoFigures.parse(JSON.parse(await readFile(join(source, 'figures.json'), 'utf8')));
    for (const [path, value] of Object.entries(figures)) {
      await runCommand(
        store,
        { type: 'set-estimate', path, value },
        { now: new Date().toISOString(), idleMin },
      );
    }
  } finally {
    await library.close();
  }
  return folder;
}

/** Length of a FLAC file by its STREAMINFO block (RFC 9639, section 8.2). */
function flacSeconds(path: string): number {
  const head = readFileSync(path).subarray(8, 42);
  const rate = (head[10]! << 12) | (head[11]! << 4) | (head[12]! >> 4);
  const samples = (head[13]! & 0x0f) * 2 ** 32 + head.readUInt32BE(14);
  return Math.round((samples / rate) * 1000) / 1000;
}
