// A photograph of a receipt made small enough to be kept: drawn smaller, and coded with less care, until it fits.
import { MOST_BYTES, type Receipt, inKilobytes, receiptProblem } from '../record/receipt.ts';

export type Taken =
  | { readonly kind: 'taken'; readonly receipt: Receipt }
  | { readonly kind: 'refused'; readonly why: string };

/** The longer side in pixels and the care, from fine to coarse. */
const TRIES = [
  [1600, 0.8],
  [1600, 0.6],
  [1200, 0.6],
  [900, 0.5],
  [600, 0.4],
] as const;

export async function receiptOf(file: File): Promise<Taken> {
  const { name } = file;
  if (file.size <= MOST_BYTES) {
    const receipt = { name, url: await urlOf(file) };
    if (receiptProblem(receipt) === null) return { kind: 'taken', receipt };
  }
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture)
    return { kind: 'refused', why: `"${name}" is no picture that this browser can open.` };
  try {
    for (const [side, care] of TRIES) {
      const smaller = await drawn(picture, side, care);
      if (!smaller || smaller.size > MOST_BYTES) continue;
      const receipt = { name, url: await urlOf(smaller) };
      if (receiptProblem(receipt) === null) return { kind: 'taken', receipt };
    }
  } finally {
    picture.close();
  }
  return {
    kind: 'refused',
    why: `"${name}" can't be made smaller than ${inKilobytes(MOST_BYTES)}.`,
  };
}

function drawn(picture: ImageBitmap, side: number, care: number): Promise<Blob | null> {
  const by = Math.min(1, side / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * by));
  canvas.height = Math.max(1, Math.round(picture.height * by));
  const pen = canvas.getContext('2d');
  if (!pen) return Promise.resolve(null);
  // What was clear comes out as paper, not as black.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => {
    canvas.toBlob(resolve, 'image/jpeg', care);
  });
}

function urlOf(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => {
      if (typeof reader.result === 'string') resolve(reader.result);
    });
    reader.addEventListener('error', () => reject(reader.error ?? new Error('not read')));
    reader.readAsDataURL(blob);
  });
}
