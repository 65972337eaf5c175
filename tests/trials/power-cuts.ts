import { join } from 'node:path';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import { SafeJsonFile } from '../../server/store/safe-json-file.ts';
import { UnheardSound } from '../../server/store/unheard-sound.ts';
import { LogBuilder } from '../log/log-builder.ts';
import { RecordingFileSystem } from './recording-file-system.ts';

export type PowerReport = { cuts: number; acknowledged: number; lost: string[] };

/** What was promised, and how many calls the disk had had when it was. */
type Promised = { after: number; check: (disk: RecordingFileSystem) => Promise<string | undefined> };

const FOLDER = join('/', 'data', 'quilts', 'q');
const SETTINGS = join('/', 'data', 'settings.json');
/** So small that segments are closed and snapshots written all the time. */
const SMALL = { segmentBytes: 900, snapshotEvery: 5 };

/**
 * Records what the store does to the disk while notes, settings and speech are kept, then cuts the power
 * after each call: what was not synced is dropped, torn, or kept out of order as `random` (0 to 1) says.
 * Everything promised by then has to be there, and the log has to open.
 */
export async function powerCuts(variants: number, random: () => number): Promise<PowerReport> {
  const disk = new RecordingFileSystem();
  const promised: Promised[] = [];
  const promise = (check: Promised['check']): void => {
    promised.push({ after: disk.calls.length, check });
  };
  await disk.makeFolder(FOLDER);
  const store = await QuiltStore.open(disk, 'q', FOLDER, SMALL);
  const { quilt } = new LogBuilder().log;
  await store.commit(() => ({ events: [{ type: 'quilt-made', quilt }] }));
  const settings = new SafeJsonFile<{ n: number }>(disk, SETTINGS);
  const unheard = new UnheardSound(disk, FOLDER);
  for (let i = 0; i < 12; i++) {
    const batch = Array.from({ length: 1 + (i % 4) }, (_, k) => `p${i}.${k}`);
    await Promise.all(
      batch.map((path) => store.commit(() => ({ events: [{ type: 'estimate-set', path, value: i }] }))),
    );
    promise(async (after) => {
      const { log, damage } = await QuiltStore.open(after, 'q', FOLDER, SMALL);
      const missing = batch.find((path) => log.estimateSettings[path] !== i);
      if (missing !== undefined) return `event ${missing}`;
      return damage.some((one) => one.kind !== 'tail') ? `damage ${damage[0]?.kind}` : undefined;
    });
    await settings.write({ n: i });
    promise(async (after) => {
      const read = await new SafeJsonFile<{ n: number }>(after, SETTINGS).read();
      return read !== null && read.n >= i ? undefined : `setting ${i}, got ${JSON.stringify(read)}`;
    });
    if (i % 3 === 0) {
      await unheard.keep(
        { id: `s${i}`, at: '2026-03-14T10:00:00Z', seconds: 1 },
        new Float32Array(1600).fill(0.5),
      );
      promise(async (after) => {
        const found = (await new UnheardSound(after, FOLDER).list()).some((sound) => sound.id === `s${i}`);
        const bytes = await new UnheardSound(after, FOLDER).sound(`s${i}`).catch(() => new Uint8Array());
        return found && bytes.length === 44 + 3200 ? undefined : `speech s${i}`;
      });
    }
  }
  const report: PowerReport = { cuts: 0, acknowledged: promised.length, lost: [] };
  for (let count = 0; count <= disk.calls.length; count++) {
    for (let variant = 0; variant < variants; variant++) {
      const choices = new Map<number, number>();
      const survives = (index: number): number => {
        // First nothing, then everything that was not synced; after that by chance, and writes in part.
        if (variant < 2) return variant;
        if (!choices.has(index)) choices.set(index, random() < 0.4 ? 0 : random() < 0.5 ? 1 : random());
        return choices.get(index)!;
      };
      report.cuts++;
      for (const { after, check } of promised) {
        if (after > count) continue;
        const wrong = await check(disk.afterPowerCut(count, survives)).catch(
          (error: Error) => `did not open: ${error.message}`,
        );
        if (wrong !== undefined) report.lost.push(`after call ${count}, variant ${variant}: ${wrong}`);
      }
    }
  }
  return report;
}
