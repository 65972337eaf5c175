import { createHash } from 'node:crypto';
import {
  createWriteStream,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import sharp from 'sharp';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { recordDocument } from '../../core/record/record-document.ts';
import { importArchive } from '../../server/export/archive/import-archive.ts';
import { exportQuilt } from '../../server/export/export-quilt.ts';
import { longLog } from '../record/long-log.ts';

type Row = { name: string; value: string; target: string };
const ENTRIES = 3000;
const PHOTOS = 200;

/** The record of a quilt of 3,000 entries and 200 photographs: to PDF, to the page, out and in again. */
export async function benchRecord(): Promise<Row[]> {
  const root = mkdtempSync(join(tmpdir(), 'quiltside-bench-record-'));
  try {
    return await measure(root);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

async function measure(root: string): Promise<Row[]> {
  const rows: Row[] = [];
  const folder = join(root, 'quilt');
  mkdirSync(join(folder, 'photos'), { recursive: true });
  mkdirSync(join(folder, 'audio'));
  // Noise, softened: it packs about as badly as cloth does.
  const noise = Buffer.alloc(1600 * 1200 * 3);
  for (let i = 0, seed = 1; i < noise.length; i++) {
    seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
    noise[i] = seed >>> 24;
  }
  const picture = await sharp(noise, { raw: { width: 1600, height: 1200, channels: 3 } })
    .blur(1.2)
    .jpeg({ quality: 82 })
    .toBuffer();
  const { log, events } = longLog(ENTRIES, PHOTOS);
  for (const { file } of log.photos) writeFileSync(join(folder, 'photos', file), picture);
  writeFileSync(join(folder, 'audio', 'evening.wav'), noise.subarray(0, 20_000_000));
  const hours = hoursFromLog(log, { idleMin: 30 });
  const source = { state: log, events, folder, idleMin: 30 };

  const pdf = async (): Promise<{ ms: number; cpu: number; bytes: number; rssMb: number }> => {
    const start = performance.now();
    const startCpu = cpuMs();
    const { body } = await exportQuilt('pdf', source, { document: 'treatment' });
    let bytes = 0;
    let rssMb = 0;
    const counted = (body as Readable).on('data', (chunk: Buffer) => {
      bytes += chunk.length;
    });
    // Asking at every piece would take a quarter of the time that is measured.
    const watch = setInterval(() => {
      rssMb = Math.max(rssMb, process.memoryUsage.rss() / 1e6);
    }, 20);
    await pipeline(counted, createWriteStream(join(root, 'record.pdf')));
    clearInterval(watch);
    return { ms: performance.now() - start, cpu: cpuMs() - startCpu, bytes, rssMb };
  };
  const first = await pdf();
  const second = await pdf();
  rows.push({
    name: `record of ${ENTRIES} entries and ${PHOTOS} photographs to PDF (${(first.bytes / 1e6).toFixed(0)} MB)`,
    value: `${seconds(first.ms)} first, ${seconds(second.ms)} after (processor ${seconds(first.cpu)}, ${seconds(second.cpu)}), ${Math.max(first.rssMb, second.rssMb).toFixed(0)} MB memory`,
    target: '≤ 3 s, ≤ 400 MB',
  });

  const times: number[] = [];
  const modelCpu = cpuMs();
  for (let i = 0; i < 20; i++) {
    const start = performance.now();
    recordDocument(log, 'treatment', { at: '2026-03-14T13:00:00Z', hours });
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  rows.push({
    name: `document model of ${ENTRIES} entries, as after each change in the page`,
    value: `p50 ${times[10]!.toFixed(0)} ms, p95 ${times[18]!.toFixed(0)} ms (processor ${((cpuMs() - modelCpu) / times.length).toFixed(0)} ms each)`,
    target: '≤ 100 ms',
  });

  const outStart = performance.now();
  const { body } = await exportQuilt('zip', source);
  const path = join(root, 'quilt.zip');
  await pipeline(body as Readable, createWriteStream(path));
  const outMs = performance.now() - outStart;
  const inStart = performance.now();
  const taken = await importArchive(path, join(root, 'in'));
  const inMs = performance.now() - inStart;
  const sha = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');
  const names = readdirSync(join(folder, 'photos'));
  const sameFiles = names.filter(
    (name) => sha(join(folder, 'photos', name)) === sha(join(root, 'in/photos', name)),
  ).length;
  const sameEvents = JSON.stringify(taken.events) === JSON.stringify(events);
  rows.push({
    name: 'archive out and in',
    value: `${seconds(outMs)} out, ${seconds(inMs)} in; events ${sameEvents ? 'equal' : 'DIFFER'}, ${sameFiles} of ${names.length} photographs equal`,
    target: 'every event and hash equal',
  });
  return rows;
}

/** Milliseconds of processor: what the clock would say on a machine with nothing else to do. */
const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;
