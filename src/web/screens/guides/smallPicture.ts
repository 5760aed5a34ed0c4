import { largestPhoto } from '#core/guide/guide.ts';
import { Problem } from '../../api.ts';

/** Pixels along the longer side: sharp at the size that guides show, on paper too. */
const longestSide = 360;

/**
 * A picture file as a small JPEG in a `data:` address, on white where it is transparent.
 *
 * @throws Problem for a file that is no picture.
 */
export async function smallPicture(file: Blob): Promise<string> {
  const bitmap = await createImageBitmap(file).catch(() => {
    throw new Problem(
      'This is no picture that the browser can read',
      'The file could not be opened as a picture.',
      'Choose a JPEG, PNG or WebP file.',
      'picture',
    );
  });
  const shrink = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * shrink));
  canvas.height = Math.max(1, Math.round(bitmap.height * shrink));
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  const tries = [0.82, 0.7, 0.5, 0.3].map(quality => () => canvas.toDataURL('image/jpeg', quality));
  for (const attempt of tries) {
    const dataUrl = attempt();
    if (dataUrl.length <= largestPhoto) return dataUrl;
  }
  throw new Problem('The picture stays too large', 'It could not be made smaller than 100 kB.', 'Choose another picture.', 'picture');
}
