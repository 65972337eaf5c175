import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decide } from '../../core/log/decide.ts';
import type { Log } from '../../core/log/log.ts';
import { importArchive } from '../../server/export/archive/import-archive.ts';
import { writeArchive } from '../../server/export/archive/write-archive.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { listSegments } from '../../server/store/journal-segments.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import type { Reading } from '../../shared/note.ts';
import type { Command } from '../../shared/wire.ts';
import { readBody } from '../export/read-body.ts';
import { LogBuilder } from '../log/log-builder.ts';
import { commandsOfLog, type Model, type Real } from '../log/log-model.ts';
import { temporaryFolder } from './temporary-folder.ts';

/** So small that a handful of notes closes a segment and makes a snapshot. */
const SMALL = { segmentBytes: 1_000, snapshotEvery: 6 };

/** The log of a real store: segments and snapshots on the disk, archives written and taken in. */
class OnDisk implements Real {
  next = 1;
  opened = 0;
  fromSnapshot = 0;
  mostSegments = 0;

  private constructor(
    readonly root: string,
    public folder: string,
    public store: QuiltStore,
  ) {}

  static async make(root: string): Promise<OnDisk> {
    const folder = join(root, 'q');
    await mkdir(folder, { recursive: true });
    const store = await QuiltStore.open(nodeFileSystem, 'quilt', folder, SMALL);
    const { quilt } = new LogBuilder().log;
    await store.commit(() => ({ events: [{ type: 'quilt-made', quilt }] }));
    return new OnDisk(root, folder, store);
  }

  get log(): Log {
    return this.store.log;
  }
  id = (): string => `id${this.next++}`;

  async run(command: Command, reading?: Reading): Promise<void> {
    const given = {
      at: '2026-03-14T10:00:00Z',
      id: this.id,
      ...(reading ? { reading: { reading, conversation: {}, rules: '1' } } : {}),
    };
    await this.store.commit((log) => decide(log, command, given)).catch(() => undefined);
  }

  async restart(): Promise<void> {
    await this.store.close();
    this.store = await QuiltStore.open(nodeFileSystem, 'quilt', this.folder, SMALL);
    expect(this.store.damage).toEqual([]);
    this.opened++;
    if (this.store.log.parts.events.older) this.fromSnapshot++;
    this.mostSegments = Math.max(this.mostSegments, (await listSegments(nodeFileSystem, this.folder)).length);
  }

  async carryOver(): Promise<void> {
    const { log, folder } = this;
    const path = join(this.root, 'a.zip');
    const madeAt = new Date('2026-03-14T13:00:00Z');
    const parts = [{ path: 'README.txt', content: async () => 'A quilt.' }];
    const archive = writeArchive({ quilt: log.quilt, events: log.eventsSince(0), folder, parts, madeAt });
    await writeFile(path, await readBody(archive));
    await this.store.close();
    this.folder = join(this.root, `q${this.opened++}`);
    await importArchive(path, this.folder);
    this.store = await QuiltStore.open(nodeFileSystem, 'quilt', this.folder, SMALL);
  }
}

test('a log on the disk behaves as its model: note, amend, undo, confirm, edit, restart, import', async () => {
  const root = await temporaryFolder();
  let runs = 0;
  let fromSnapshot = 0;
  let mostSegments = 0;
  await fc.assert(
    fc.asyncProperty(commandsOfLog(60), async (list) => {
      const real = await OnDisk.make(join(root, `${runs++}`));
      await fc.asyncModelRun(() => ({ model: { notes: [], loose: [] } as Model, real: real as Real }), list);
      await real.restart();
      await real.store.close();
      fromSnapshot += real.fromSnapshot;
      mostSegments = Math.max(mostSegments, real.mostSegments);
    }),
    { numRuns: 150 },
  );
  // That what is tried here did happen.
  expect(fromSnapshot).toBeGreaterThan(10);
  expect(mostSegments).toBeGreaterThan(2);
}, 120_000);
