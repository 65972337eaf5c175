import { join } from 'node:path';
import { readSegments } from '../../server/store/journal-segments.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import { RecordingFileSystem } from './recording-file-system.ts';

export type CutReport = { lengths: number; bits: number; segments: number; wrong: string[] };

const FOLDER = join('/', 'data', 'q');
const SIZES = { segmentBytes: 6_000, snapshotEvery: 60 };
const EVENTS = 200;

/**
 * A journal of several segments with a snapshot: its open segment cut at every length, and single bits turned over at
 * `bits` random places of all its files. It has to open, report damage of the journal, and serve no event otherwise than
 * it was written.
 */
export async function cutJournals(bits: number, random: () => number): Promise<CutReport> {
  const disk = new RecordingFileSystem();
  await disk.makeFolder(FOLDER);
  const store = await QuiltStore.open(disk, 'q', FOLDER, SIZES);
  for (let i = 0; i < EVENTS; i++) {
    const value = 'x'.repeat((i * 37) % 200);
    await store.commit(() => ({ events: [{ type: 'estimate-set', path: `p${i}`, value }] }));
  }
  await store.close();
  const written = store.log.eventsSince(0).map((event) => JSON.stringify(event));
  const segments = await readSegments(disk, FOLDER);
  const open = segments.at(-1)!;
  const wrong: string[] = [];

  const check = async (what: string, file: string, bytes: Uint8Array, isCut: boolean): Promise<void> => {
    const damaged = new RecordingFileSystem(new Map([...disk.files, [join(FOLDER, file), bytes]]));
    const opened = await QuiltStore.open(damaged, 'q', FOLDER, SIZES).catch((error: Error) => {
      wrong.push(`${what} did not open: ${error.message}`);
    });
    if (!opened) return;
    const { log, damage } = opened;
    await opened.close();
    const served = log.eventsSince(0).filter(({ event }) => event.type !== 'event-lost');
    if (!served.every((event) => JSON.stringify(event) === written[event.seq - 1]))
      wrong.push(`${what}: another event`);
    for (const { event } of served)
      if (event.type === 'estimate-set' && log.estimateSettings[event.path] !== event.value)
        wrong.push(`${what}: ${event.path}`);
    if (Object.keys(log.estimateSettings).length !== served.length)
      wrong.push(`${what}: a figure of no event`);
    const isJournal = file.startsWith('journal');
    if (!isCut && served.length < EVENTS - (isJournal ? 2 : 0)) wrong.push(`${what}: ${served.length} left`);
    if (!isCut && isJournal && damage.length === 0) wrong.push(`${what}: not reported`);
    if (isCut && served.length < open.from - 1) wrong.push(`${what}: ${served.length} left`);
  };

  for (let length = 0; length <= open.bytes.length; length++)
    await check(`cut at ${length}`, open.file, open.bytes.subarray(0, length), true);
  const files = [...disk.files.keys()].map((path) => path.slice(FOLDER.length + 1));
  const sizes = files.map((file) => disk.files.get(join(FOLDER, file))!.length);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  for (let i = 0; i < bits; i++) {
    let at = Math.floor(random() * total);
    let which = 0;
    while (at >= sizes[which]!) at -= sizes[which++]!;
    const bytes = Uint8Array.from(disk.files.get(join(FOLDER, files[which]!))!);
    const bit = Math.floor(random() * 8);
    bytes[at]! ^= 1 << bit;
    await check(`${files[which]}, byte ${at}, bit ${bit}`, files[which]!, bytes, false);
  }
  return { lengths: open.bytes.length + 1, bits, segments: segments.length, wrong };
}
