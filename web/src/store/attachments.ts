/** Photos and files of a job: kept by their content first, then named in the log. */
import { reason } from '../core/told';
import type { JobSession } from '../job/session.svelte';
import { t } from '../words/words.svelte';
import { database, sha256, type StoredAttachment } from './database';
import { storeFailure } from './failure';
import { HEAD_BYTES, pictureSize, shrunk } from './picture';

/** What the server takes. */
export const LARGEST_FILE_BYTES = 25_000_000;
const LARGEST_PHOTO_BYTES = 60_000_000;
/** Decoded, a picture of this size takes 260 MB; cameras that make more have a smaller setting. */
const MOST_PIXELS = 65_000_000;

/** A file that can't be taken, in words for the person who chose it. */
class NotTaken extends Error {}

/**
 * Takes a photo into a job: made smaller, kept on this device, named in the log.
 *
 * @returns its SHA-256; undefined where it was not taken, with the reason in the session's `failure` or `problems`
 */
export async function attachPhoto(session: JobSession, file: File): Promise<string | undefined> {
  return attach(session, () => photo(file));
}

/** Takes a file into a job as it is, under its own name. */
export async function attachFile(session: JobSession, file: File, mediaType = file.type): Promise<string | undefined> {
  return attach(session, async () => {
    if (file.size > LARGEST_FILE_BYTES) {
      throw new NotTaken(t('files.tooLarge', { name: file.name, size: megabytes(file.size), most: megabytes(LARGEST_FILE_BYTES) }));
    }
    if (file.size === 0) {
      throw new NotTaken(t('files.empty', { name: file.name }));
    }
    return { name: plainName(file.name), bytes: new Blob([await read(file)], { type: mediaType || 'application/octet-stream' }) };
  });
}

interface Taken {
  readonly name: string;
  readonly bytes: Blob;
}

async function attach(session: JobSession, take: () => Promise<Taken>): Promise<string | undefined> {
  session.clear();
  try {
    const { name, bytes } = await take();
    const hash = await sha256(await bytes.arrayBuffer());
    while (session.busy) {
      // Somebody confirmed a step while the picture was made smaller; that goes first.
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    const fresh = await keepBytes({ sha256: hash, job: session.job, mediaType: bytes.type, bytes, sent: 0 });
    if (await session.add('attached', { name, mediaType: bytes.type, sha256: hash, bytes: bytes.size })) {
      return hash;
    }
    if (fresh) {
      await database.attachments.delete(hash);
    }
  } catch (error) {
    session.failure = reason(error);
  }
  return undefined;
}

/** Whether they were not here before. */
async function keepBytes(attachment: StoredAttachment): Promise<boolean> {
  try {
    return await database.transaction('rw', database.attachments, async () => {
      if ((await database.attachments.get(attachment.sha256)) !== undefined) {
        return false;
      }
      await database.attachments.add(attachment);
      return true;
    });
  } catch (error) {
    throw storeFailure(error);
  }
}

async function photo(file: File): Promise<Taken> {
  if (file.size > LARGEST_PHOTO_BYTES) {
    throw new NotTaken(t('files.photoTooLarge', { name: file.name, size: megabytes(file.size), most: megabytes(LARGEST_PHOTO_BYTES) }));
  }
  const size = pictureSize(new Uint8Array(await read(file.slice(0, HEAD_BYTES))));
  if (size === undefined || size.width === 0 || size.height === 0) {
    throw new NotTaken(t('files.notPhoto', { name: file.name }));
  }
  if (size.width * size.height > MOST_PIXELS) {
    throw new NotTaken(t('files.photoPixels', { name: file.name, width: size.width, height: size.height }));
  }
  let bytes: Blob;
  try {
    bytes = await shrunk(file, size);
  } catch {
    throw new NotTaken(t('files.photoBroken', { name: file.name }));
  }
  return { name: `${plainName(file.name).replace(/\.[a-z0-9]{1,5}$/i, '')}.jpg`, bytes };
}

/** A file on a card that was pulled, or that another program holds, can't be read although it could be chosen. */
async function read(file: Blob): Promise<ArrayBuffer> {
  try {
    return await file.arrayBuffer();
  } catch {
    throw new NotTaken(t('files.unreadable'));
  }
}

/** A name without folders, control characters and other surprises. */
export function plainName(name: string): string {
  const plain = name
    .replace(/^.*[\\/]/, '')
    .replace(/[\p{Cc}\p{Cf}<>:"|?*]/gu, '_')
    .trim()
    .slice(-120);
  return plain === '' || /^\.+$/.test(plain) ? 'file' : plain;
}

export function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(bytes < 1e6 ? 2 : 0)} MB`;
}

/**
 * The bytes of an attachment: from this device, or from the server when it is there.
 *
 * @returns undefined where neither has them now
 */
export async function attachmentBytes(job: string, hash: string): Promise<Blob | undefined> {
  const here = await database.attachments.get(hash);
  if (here !== undefined) {
    return here.bytes;
  }
  try {
    const response = await fetch(`/api/attachments/${hash}`, { signal: AbortSignal.timeout(20_000) });
    if (!response.ok) {
      return undefined;
    }
    const bytes = await response.blob();
    if ((await sha256(await bytes.arrayBuffer())) !== hash) {
      return undefined;
    }
    // To be here when the server is not; a device without room still shows it.
    await keepBytes({ sha256: hash, job, mediaType: bytes.type, bytes, sent: 1 }).catch(() => undefined);
    return bytes;
  } catch {
    return undefined;
  }
}
