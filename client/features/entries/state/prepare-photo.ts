import { isHeic } from '../../../../shared/is-heic.ts';

const FULL_PX = 4096;
const SMALL_PX = 360;
const LARGEST_BYTES = 100 * 1024 * 1024;

/**
 * A photograph made ready on this device: turned upright as its camera says, everything else that the
 * camera wrote into it (place, device) left behind, and a small one beside it. Throws with words for
 * the page where the browser can't show it.
 */
export async function preparePhoto(file: File): Promise<{ full: Blob; small: Blob }> {
  if (file.size === 0) throw new Error('The file is empty.');
  if (file.size > LARGEST_BYTES) {
    throw new Error(
      `It has ${Math.round(file.size / 1_048_576)} MB; up to 100 MB can be taken. Make it smaller first.`,
    );
  }
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new Error(
      /heic|heif/i.test(file.name + file.type) || isHeic(await headOf(file))
        ? 'This browser can’t show HEIC photographs. Set the camera to JPEG, or save it as JPEG, and choose it again.'
        : 'It is no photograph that this browser can show. JPEG, PNG and WebP can be taken.',
    );
  }
  try {
    return { full: await drawn(picture, FULL_PX, 0.92), small: await drawn(picture, SMALL_PX, 0.8) };
  } finally {
    picture.close();
  }
}

const headOf = async (file: File): Promise<Uint8Array> =>
  new Uint8Array(await file.slice(0, 32).arrayBuffer());

async function drawn(picture: ImageBitmap, longest: number, quality: number): Promise<Blob> {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser could not draw it. Try another browser.');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
  if (!blob) throw new Error('This browser could not draw it. Try another browser.');
  return blob;
}
