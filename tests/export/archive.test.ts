import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fold } from '../../core/log/evolve.ts';
import { ArchiveRefused, importArchive } from '../../server/export/archive/import-archive.ts';
import { writeArchive } from '../../server/export/archive/write-archive.ts';
import { exportQuilt } from '../../server/export/export-quilt.ts';
import { readLine } from '../../server/store/journal-line.ts';
import { ArchiveManifest } from '../../shared/quilt-export.ts';
import { demoLog } from '../record/demo-log.ts';
import { readBody } from './read-body.ts';

let root: string;
let whole: Uint8Array;
/** The same without its papers, which take most of the time: for damaging again and again. */
let bare: Uint8Array;
const { log, events } = demoLog();
const sound = Buffer.from(Array.from({ length: 200_000 }, (_, i) => (i * 7919) % 251));
let folders = 0;
const fresh = (): string => join(root, 'in', `q${folders++}`);
const put = (bytes: Uint8Array): string => {
  const path = join(root, `a${folders++}.zip`);
  writeFileSync(path, bytes);
  return path;
};
const sha = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'quiltside-archive-'));
  mkdirSync(join(root, 'quilt/audio'), { recursive: true });
  mkdirSync(join(root, 'quilt/photos'));
  writeFileSync(join(root, 'quilt/audio/n4.flac'), sound);
  writeFileSync(join(root, 'quilt/photos/p1.jpg'), Buffer.from([0xff, 0xd8, 0xff, 1, 2, 3]));
  writeFileSync(join(root, 'quilt/photos/p1-small.webp'), 'small');
  writeFileSync(join(root, 'quilt/photos/.hidden'), 'not ours');
  const source = { state: log, events, folder: join(root, 'quilt'), idleMin: 30 };
  whole = await readBody((await exportQuilt('zip', source)).body);
  bare = await readBody(
    writeArchive({
      quilt: log.quilt,
      events,
      folder: join(root, 'quilt'),
      parts: [{ path: 'README.txt', content: async () => 'A quilt.' }],
      madeAt: new Date('2026-03-14T13:00:00Z'),
    }),
  );
}, 180_000);
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** Opens an archive with fflate, changes its files, packs it again with the manifest as it is or made right. */
function repacked(change: (files: Record<string, Uint8Array>) => void, rightManifest = false): string {
  const files = unzipSync(bare);
  change(files);
  if (rightManifest) {
    const manifest = JSON.parse(strFromU8(files['manifest.json']!));
    manifest.files = Object.entries(files)
      .filter(([path]) => path !== 'manifest.json')
      .map(([path, bytes]) => ({ path, bytes: bytes.length, sha256: sha(bytes) }));
    files['manifest.json'] = strToU8(JSON.stringify(manifest));
  }
  return put(zipSync(files as Zippable, { level: 6 }));
}
async function refusal(path: string): Promise<string> {
  const folder = fresh();
  const error = await importArchive(path, folder).then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(ArchiveRefused);
  expect(() => readdirSync(folder)).toThrow();
  const { message } = error as Error;
  expect(message).toMatch(/Nothing was taken from it\.$/);
  return message;
}

describe('out', () => {
  test('read by fflate: every file is in the manifest with its true hash, and documents stand on their own', () => {
    const files = unzipSync(whole);
    const manifest = ArchiveManifest.parse(JSON.parse(strFromU8(files['manifest.json']!)));
    expect(manifest.files.map((file) => file.path).sort()).toEqual(
      Object.keys(files)
        .filter((path) => path !== 'manifest.json')
        .sort(),
    );
    for (const { path, bytes, sha256 } of manifest.files) {
      expect(files[path]!.length).toBe(bytes);
      expect(sha(files[path]!)).toBe(sha256);
    }
    for (const path of [
      'README.txt',
      'papers/letter.pdf',
      'papers/letter.txt',
      'papers/record.html',
      'entries.csv',
      'quilt.json',
      'sessions.ics',
      'audio/n4.flac',
    ]) {
      expect(Object.keys(files)).toContain(path);
    }
    expect(strFromU8(files['papers/letter.pdf']!.slice(0, 8), true)).toBe('%PDF-1.7');
    expect(Object.keys(files)).not.toContain('photos/.hidden');
    const lines = strFromU8(files['journal.jsonl']!).trimEnd().split('\n');
    expect(lines.map((line) => readLine(line))).toEqual(events);
  });

  test.skipIf(spawnSync('unzip', ['-v']).error !== undefined)('unzip of the system finds no error', () => {
    const { status, stdout } = spawnSync('unzip', ['-t', put(whole)], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toContain('No errors detected');
  });
});

describe('and back in', () => {
  test('every event equal, every file’s hash equal', async () => {
    const folder = fresh();
    const taken = await importArchive(put(whole), folder);
    expect(taken.events).toEqual(events);
    expect(taken.quilt).toEqual(log.quilt);
    expect(fold(taken.events).entries).toEqual(log.entries);
    expect(sha(readFileSync(join(folder, 'audio/n4.flac')))).toBe(sha(sound));
    expect(readdirSync(folder).sort()).toEqual(['audio', 'format.json', 'journal.jsonl', 'photos']);
    expect(readdirSync(join(folder, 'photos')).sort()).toEqual(['p1-small.webp', 'p1.jpg']);
    const lines = readFileSync(join(folder, 'journal.jsonl'), 'utf8').trimEnd().split('\n');
    expect(lines.map((line) => readLine(line))).toEqual(events);
  });

  test('as a copy it gets another id and is otherwise the same', async () => {
    const { events: copied, quilt } = await importArchive(put(bare), fresh(), 'another');
    expect(quilt).toEqual({ ...log.quilt, id: 'another' });
    expect(copied.slice(1)).toEqual(events.slice(1));
  });

  test('an archive packed again by another program is taken, for its files are the same', async () => {
    expect(
      (
        await importArchive(
          repacked(() => undefined),
          fresh(),
        )
      ).events,
    ).toEqual(events);
  });
});

describe('refused, with a clear word and nothing left behind', () => {
  test('no zip, an empty file, a zip of something else', async () => {
    expect(await refusal(put(strToU8('just text')))).toMatch(/no whole zip file/);
    expect(await refusal(put(new Uint8Array(0)))).toMatch(/no whole zip file/);
    expect(await refusal(put(zipSync({ 'letter.txt': strToU8('hello') })))).toMatch(/no manifest\.json/);
  });

  test('cut at any length', async () => {
    for (let i = 1; i <= 20; i++) {
      await refusal(put(bare.slice(0, Math.floor((bare.length * i) / 21))));
    }
  });

  test('one bit changed anywhere: refused, or every event and hash is still right', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: bare.length - 1 }),
        fc.integer({ min: 0, max: 7 }),
        async (at, bit) => {
          const damaged = Uint8Array.from(bare);
          damaged[at]! ^= 1 << bit;
          const folder = fresh();
          try {
            const taken = await importArchive(put(damaged), folder);
            // Dates, comments and padding of the zip itself carry nothing.
            expect(taken.events).toEqual(events);
            expect(sha(readFileSync(join(folder, 'audio/n4.flac')))).toBe(sha(sound));
          } catch (error) {
            expect(error).toBeInstanceOf(ArchiveRefused);
            expect(() => readdirSync(folder)).toThrow();
          } finally {
            rmSync(folder, { recursive: true, force: true });
          }
        },
      ),
      { numRuns: 150 },
    );
  }, 120_000);

  test('a file altered, taken out, or put in', async () => {
    expect(await refusal(repacked((files) => files['audio/n4.flac']!.set([1, 2, 3], 1000)))).toMatch(
      /audio\/n4\.flac.*SHA-256/,
    );
    expect(
      await refusal(
        repacked((files) => {
          delete files['photos/p1.jpg'];
        }),
      ),
    ).toMatch(/lacks “photos\/p1\.jpg”/);
    expect(
      await refusal(
        repacked((files) => {
          files['more.txt'] = strToU8('more');
        }),
      ),
    ).toMatch(/does not list/);
  });

  test('names that lead out of the folder', async () => {
    for (const name of [
      '../evil.txt',
      'audio/../../evil.txt',
      '/etc/evil',
      'C:/evil.txt',
      'audio\\..\\evil.txt',
      '.ssh/key',
      'a//b',
      'audio/x y.flac',
    ]) {
      const message = await refusal(
        repacked((files) => {
          files[name] = strToU8('evil');
        }, true),
      );
      expect(message, name).toMatch(/no name that an archive|could not be read|invalid/i);
    }
    expect(readdirSync(root)).not.toContain('evil.txt');
  });

  test('a bomb: a zip of zeros', async () => {
    expect(
      await refusal(
        repacked((files) => {
          files['audio/zeros.wav'] = new Uint8Array(60_000_000);
        }, true),
      ),
    ).toMatch(/would grow from \d+ to 60000000 bytes/);
  });

  test('a size that is not the true one', async () => {
    const lied = Uint8Array.from(bare);
    // The uncompressed size of every central entry of README.txt, set to 1 GB.
    const text = Buffer.from(lied).toString('latin1');
    const at = text.lastIndexOf('README.txt') - 46 + 24;
    new DataView(lied.buffer).setUint32(at, 1_000_000_000, true);
    expect(await refusal(put(lied))).toMatch(/bytes/);
  });

  test('a newer schema, a damaged manifest, another quilt', async () => {
    const with_ = (change: (manifest: Record<string, unknown>) => void): string =>
      repacked((files) => {
        const manifest = JSON.parse(strFromU8(files['manifest.json']!));
        change(manifest);
        files['manifest.json'] = strToU8(JSON.stringify(manifest));
      });
    expect(await refusal(with_((manifest) => (manifest.version = 99)))).toMatch(/newer Quiltside/);
    expect(await refusal(with_((manifest) => (manifest.logVersion = 99)))).toMatch(/newer Quiltside/);
    expect(await refusal(with_((manifest) => (manifest.format = 'other')))).toMatch(/no archive of a quilt/);
    expect(await refusal(with_((manifest) => (manifest.files = 'none')))).toMatch(/not as expected/);
    expect(await refusal(with_((manifest) => (manifest.events = 5)))).toMatch(/manifest says 5/);
    expect(await refusal(with_((manifest) => (manifest.quilt = { id: 'other', name: '' })))).toMatch(
      /another quilt/,
    );
    expect(
      await refusal(
        repacked((files) => {
          files['manifest.json'] = strToU8('{');
        }),
      ),
    ).toMatch(/no JSON/);
  });

  test('a journal with a gap, a wrong checksum, a cut line, an unknown event, a path for a file', async () => {
    const with_ = (change: (lines: string[]) => string[]): string =>
      repacked((files) => {
        files['journal.jsonl'] = strToU8(change(strFromU8(files['journal.jsonl']!).split('\n')).join('\n'));
      }, true);
    const { writeLine } = await import('../../server/store/journal-line.ts');
    const line = (event: unknown): string =>
      writeLine({ seq: 5, at: '2026-03-02T18:50:00Z', event } as never).trimEnd();
    expect(await refusal(with_((lines) => [...lines.slice(0, 5), ...lines.slice(6)]))).toMatch(
      /Event 6 .* number 7/,
    );
    expect(
      await refusal(with_((lines) => lines.map((one, i) => (i === 3 ? one.replace('note', 'mote') : one)))),
    ).toMatch(/Line 4 .*checksum/);
    expect(await refusal(with_((lines) => lines.slice(0, -1)))).toMatch(/cut short/);
    expect(
      await refusal(
        with_((lines) => lines.map((one, i) => (i === 4 ? line({ type: 'never-heard-of' }) : one))),
      ),
    ).toMatch(/Event 5/);
    const photo = { id: 'p', file: '../../x', places: [], stage: 'before', caption: '' };
    expect(
      await refusal(
        with_((lines) => lines.map((one, i) => (i === 4 ? line({ type: 'photo-added', photo }) : one))),
      ),
    ).toMatch(/names a file/);
  });
});
