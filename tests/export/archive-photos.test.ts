import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { startServer } from '../server/start-server.ts';

const form = (bytes: Uint8Array, name: string): FormData => {
  const body = new FormData();
  body.append('file', new Blob([new Uint8Array(bytes)]), name);
  return body;
};
const fabric = () => sharp({ create: { width: 64, height: 32, channels: 3, background: '#2040c0' } });

/** The width and height of a PNG's head (ISO/IEC 15948, 11.2.2), with the sum of the chunk set right. */
async function hugePng(): Promise<Buffer> {
  const huge = await fabric().png().toBuffer();
  huge.writeUInt32BE(40_000, 16);
  huge.writeUInt32BE(30_000, 20);
  huge.writeUInt32BE(crc32(huge.subarray(12, 29)), 29);
  return huge;
}

test('photographs in an archive are written anew; what was made to do harm is left out and told, the quilt is taken', async () => {
  const here = await startServer();
  const id = await here.makeQuilt();
  const sent = await here.get(`/api/quilts/${id}/photos`, {
    method: 'POST',
    body: form(await fabric().jpeg().toBuffer(), 'a.jpg'),
  });
  const { file } = (await sent.json()) as { file: string };
  const zip = await (await here.get(`/api/quilts/${id}/export/zip`)).arrayBuffer();
  const files = unzipSync(new Uint8Array(zip));
  const placed = await fabric()
    .withExif({ IFD0: { Make: 'MARKER-MAKE' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
    .jpeg()
    .toBuffer();
  expect(placed.includes('MARKER')).toBe(true);
  files[`photos/${file}`] = new Uint8Array(placed);
  files['photos/bomb.png'] = new Uint8Array(await hugePng());
  const whole = await fabric().webp().toBuffer();
  files['photos/cut.webp'] = new Uint8Array(whole.subarray(0, Math.floor(whole.length * 0.6)));
  files['photos/drawing.jpg'] = strToU8(
    '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
  );
  files['photos/other.png'] = new Uint8Array(whole);
  const manifest = JSON.parse(strFromU8(files['manifest.json']!));
  manifest.files = Object.entries(files)
    .filter(([path]) => path !== 'manifest.json')
    .map(([path, bytes]) => ({
      path,
      bytes: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
    }));
  files['manifest.json'] = strToU8(JSON.stringify(manifest));

  const there = await startServer();
  const taken = await there.get('/api/quilts/import', {
    method: 'POST',
    body: form(zipSync(files as Zippable), 'quilt.zip'),
  });
  expect(taken.status).toBe(201);
  const { leftOut } = (await taken.json()) as { leftOut: { file: string; why: string }[] };
  expect(leftOut.map((one) => one.file).sort()).toEqual(['bomb.png', 'cut.webp', 'drawing.jpg', 'other.png']);
  expect(leftOut.find((one) => one.file === 'bomb.png')?.why).toMatch(/pixel/i);
  const folder = join(there.dataFolder, 'quilts', id);
  expect(await readdir(join(folder, 'photos'))).toEqual([file]);
  expect(await readdir(folder)).not.toContain('photos-anew');
  // Put away after the answer.
  await expect.poll(() => readdir(join(there.dataFolder, 'incoming'))).toEqual([]);
  const kept = await readFile(join(folder, 'photos', file));
  const { width, height, exif } = await sharp(kept).metadata();
  expect({ width, height, exif }).toEqual({ width: 64, height: 32 });
  expect(kept.includes('MARKER')).toBe(false);
  expect((await there.get(`/api/quilts/${id}/photos/${file}`)).status).toBe(200);
  const eventsOf = async (server: typeof here) => (await server.get(`/api/quilts/${id}/events`)).json();
  expect(await eventsOf(there)).toEqual(await eventsOf(here));
}, 60_000);
