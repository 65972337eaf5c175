import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';

/** Above this a photograph is made smaller before it goes into a paper; the original stays in the quilt's folder. */
const AS_IT_IS_BYTES = 1_500_000;
const NAME = /^[A-Za-z0-9_-]{1,80}(?:-small)?\.[a-z0-9]{2,4}$/;

/**
 * The photograph as a JPEG or PNG fit for a printed paper, at most `pixels` on its longer side where it has
 * to be made anew. Undefined where the file is missing or no picture.
 */
export async function pictureForPaper(
  folder: string,
  file: string,
  pixels = 1600,
): Promise<Buffer | undefined> {
  if (!NAME.test(file)) return undefined;
  const path = join(folder, 'photos', file);
  try {
    const { size } = await stat(path);
    const bytes = await readFile(path);
    const kind =
      bytes[0] === 0xff && bytes[1] === 0xd8
        ? 'jpeg'
        : bytes[0] === 0x89 && bytes[1] === 0x50
          ? 'png'
          : 'other';
    // A PNG is always made anew: unpacking one inside the PDF costs more than a JPEG of it.
    if (kind === 'jpeg' && size <= AS_IT_IS_BYTES && pixels >= 1600) return bytes;
    return await sharp(bytes, { limitInputPixels: 120_000_000, failOn: 'error' })
      .rotate()
      .resize({ width: pixels, height: pixels, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 82 })
      .toBuffer();
  } catch {
    return undefined;
  }
}
