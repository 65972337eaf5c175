import sharp from 'sharp';
import type { ImageKind } from '../routes/sniff-image-kind.ts';

export type PhotoTask = { from: string; to: string; kind: ImageKind };
/** Said of each task in turn; `why` where it could not be done. */
export type PhotoDone = { why?: string };

/** Phones go to 200 million pixels; what claims more was made to burst. */
const MOST_PIXELS = 210_000_000;

/**
 * Decodes a picture and writes it anew, upright: its pixels and nothing else of it. Runs in a process of its own, so
 * that a picture made to break its decoder breaks that alone, and its memory goes back.
 */
async function writeAnew({ from, to, kind }: PhotoTask): Promise<void> {
  const picture = sharp(from, { limitInputPixels: MOST_PIXELS, failOn: 'error', animated: false }).rotate();
  // No `withMetadata`: place, camera, names, comments, profiles and previews stay behind. Colours become sRGB.
  const anew = {
    jpg: () => picture.jpeg({ quality: 95, chromaSubsampling: '4:4:4' }),
    png: () => picture.png({ compressionLevel: 6 }),
    webp: () => picture.webp({ quality: 95 }),
  }[kind]();
  await anew.toFile(to);
}

const tell = (done: PhotoDone): Promise<void> => new Promise((told) => process.send!(done, () => told()));

process.once('message', async (tasks: PhotoTask[]) => {
  for (const task of tasks) {
    const why = await writeAnew(task).then(
      () => undefined,
      (error: Error) => error.message.split('\n')[0]!.slice(0, 200),
    );
    await tell(why === undefined ? {} : { why });
  }
  process.exit(0);
});
