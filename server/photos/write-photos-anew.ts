import { open } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { type ImageKind, sniffImageKind } from '../routes/sniff-image-kind.ts';
import type { FileSystem } from '../store/file-system.ts';
import type { PhotoTask } from './photo-process.ts';
import { NOT_TRIED, reEncodeEach } from './re-encode-photos.ts';

export type LeftOut = { file: string; why: string };

/** As many go through the process in one turn; between turns a photograph that was just taken has its own. */
const A_TURN = 20;
/** A picture that ends its process costs up to a minute; an archive with more such was made for that. */
const MOST_BROKEN = 3;

/**
 * Writes the photographs of a quilt's folder that came from elsewhere anew, as those that are sent in one by one: what
 * cannot be read as the picture that its name says is left out, and told. The originals are gone when this returns.
 *
 * @param mostBytes of one picture
 */
export async function writePhotosAnew(fs: FileSystem, folder: string, mostBytes: number): Promise<LeftOut[]> {
  const from = join(folder, 'photos');
  const names = (await fs.list(from)).sort();
  if (names.length === 0) return [];
  const to = join(folder, 'photos-anew');
  await fs.makeFolder(to);
  const leftOut: LeftOut[] = [];
  const tasks: (PhotoTask & { name: string })[] = [];
  for (const name of names) {
    const kind = await headKind(join(from, name));
    const size = (await fs.stat(join(from, name)))?.size ?? 0;
    if (kind === undefined || extname(name) !== `.${kind}`)
      leftOut.push({ file: name, why: 'it is no picture of the kind that its name says' });
    else if (size > mostBytes) leftOut.push({ file: name, why: `it is larger than ${mostBytes} bytes` });
    else tasks.push({ name, kind, from: join(from, name), to: join(to, name) });
  }
  let broken = 0;
  for (let at = 0; at < tasks.length; at += A_TURN) {
    const some = tasks.slice(at, at + A_TURN);
    // One more such ends it.
    if (broken > MOST_BROKEN) {
      leftOut.push(...some.map(({ name }) => ({ file: name, why: NOT_TRIED })));
      continue;
    }
    const whys = await reEncodeEach(fs, some, () => ++broken <= MOST_BROKEN);
    for (const [i, why] of whys.entries()) if (why !== undefined) leftOut.push({ file: some[i]!.name, why });
  }
  await fs.removeFolder(from);
  await fs.rename(to, from);
  await fs.syncFolder(from);
  await fs.syncFolder(folder);
  return leftOut;
}

async function headKind(path: string): Promise<ImageKind | undefined> {
  const file = await open(path, 'r');
  try {
    const head = Buffer.alloc(16);
    const { bytesRead } = await file.read(head, 0, head.length, 0);
    return sniffImageKind(head.subarray(0, bytesRead));
  } finally {
    await file.close();
  }
}
