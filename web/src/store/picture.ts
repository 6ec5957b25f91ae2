/** Pictures that a person chose: what they are, by their first bytes, and how large, before anything is decoded. */

export interface PictureSize {
  readonly kind: 'jpeg' | 'png' | 'webp';
  readonly width: number;
  readonly height: number;
}

/** Where a JPEG's size stands at the latest: behind a thumbnail, colour profile and maker's notes. */
export const HEAD_BYTES = 1 << 20;

/** The size of a JPEG, PNG or WebP; undefined where the bytes are none of them. */
export function pictureSize(head: Uint8Array): PictureSize | undefined {
  const view = new DataView(head.buffer, head.byteOffset, head.byteLength);
  if (head.length > 24 && view.getUint32(0) === 0x89504e47 && text(head, 12, 4) === 'IHDR') {
    return { kind: 'png', width: view.getUint32(16), height: view.getUint32(20) };
  }
  if (head.length > 30 && text(head, 0, 4) === 'RIFF' && text(head, 8, 4) === 'WEBP') {
    return webp(head, view);
  }
  return head.length > 4 && view.getUint16(0) === 0xffd8 ? jpeg(view) : undefined;
}

function text(bytes: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}

function webp(head: Uint8Array, view: DataView): PictureSize | undefined {
  switch (text(head, 12, 4)) {
    case 'VP8 ':
      return { kind: 'webp', width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
    case 'VP8L': {
      const bits = view.getUint32(21, true);
      return { kind: 'webp', width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
    }
    case 'VP8X':
      return { kind: 'webp', width: (view.getUint32(24, true) & 0xffffff) + 1, height: (view.getUint32(26, true) >>> 8) + 1 };
    default:
      return undefined;
  }
}

/** Walks from segment to segment up to the one that starts the frame. */
function jpeg(view: DataView): PictureSize | undefined {
  let at = 2;
  while (at + 9 < view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      return { kind: 'jpeg', width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    }
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}

/** Longest side of a kept photo: a nameplate stays legible. */
export const LONGEST_SIDE = 2000;

/**
 * The picture as a JPEG no larger than {@link LONGEST_SIDE}, upright, without what the camera wrote beside it (place, owner).
 *
 * @throws where the browser can't decode it
 */
export async function shrunk(file: Blob, size: PictureSize): Promise<Blob> {
  const large = Math.max(size.width, size.height) > LONGEST_SIDE;
  // One side is enough: the browser keeps the shape, and decodes no more than it must.
  const wanted = !large ? {} : size.width >= size.height ? { resizeWidth: LONGEST_SIDE } : { resizeHeight: LONGEST_SIDE };
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image', resizeQuality: 'high', ...wanted });
  // A camera held upright turns the sides round, so that the other one may still be too long.
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  try {
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const pen = canvas.getContext('2d');
    if (pen === null) {
      throw new Error('no canvas');
    }
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) =>
      canvas.toBlob((made) => (made === null ? reject(new Error('no JPEG')) : resolve(made)), 'image/jpeg', 0.85),
    );
  } finally {
    picture.close();
    canvas.width = 0;
    canvas.height = 0;
  }
}
