/** A whole job as one file: its log as it stands, and its photos and files under their hashes. */
import { Unzip, UnzipInflate, UnzipPassThrough, type UnzipFile } from 'fflate';
import { ask } from '../core/core';
import { t } from '../words/words.svelte';
import { attachmentBytes, LARGEST_FILE_BYTES, megabytes } from './attachments';
import { sha256, type StoredAttachment } from './database';
import { jobState, logText, take } from './log';
import { StoredZip } from './zip';

const LARGEST_LOG_BYTES = 50_000_000;
const LARGEST_ARCHIVE_BYTES = 600_000_000;
const MOST_FILES = 2_000;
const ATTACHMENT = /^attachments\/([0-9a-f]{64})$/;

/** A file that is no job, in words for the person who chose it. Nothing of it was taken in. */
export class NoJob extends Error {}

export interface Exported {
  readonly name: string;
  readonly bytes: Blob;
  /** Names of attachments that neither this device nor the server in reach has. */
  readonly missing: readonly string[];
}

/** The job as a ZIP: `NAME.job.jsonl` and `attachments/SHA256`. Photos are packed as they are, one after another. */
export async function exportJob(job: string): Promise<Exported> {
  const state = await jobState(job);
  if (state === undefined) {
    throw new NoJob(t('job.none', { job }));
  }
  const missing: string[] = [];
  const zip = new StoredZip();
  await zip.add(`${job}.job.jsonl`, new Blob([await logText(job)]));
  for (const [hash, name] of new Map(state.attachments.map((a) => [a.body.sha256, a.body.name]))) {
    const bytes = await attachmentBytes(job, hash);
    if (bytes === undefined) {
      missing.push(name);
    } else {
      await zip.add(`attachments/${hash}`, bytes);
    }
  }
  return { name: `${job}.job.zip`, bytes: zip.end('application/zip'), missing };
}

/**
 * Takes in a job that was exported, or a log alone. What this device has of the job stays; lines are joined.
 *
 * @returns the job's name
 * @throws NoJob with the reason; then nothing was taken in
 */
export async function importJob(file: File): Promise<string> {
  if (file.size > LARGEST_ARCHIVE_BYTES) {
    throw new NoJob(t('archive.tooLarge', { name: file.name, size: megabytes(file.size), most: megabytes(LARGEST_ARCHIVE_BYTES) }));
  }
  const start = new Uint8Array(await file.slice(0, 4).arrayBuffer());
  const zipped = start[0] === 0x50 && start[1] === 0x4b;
  const { log, attachments } = zipped ? await unpack(file) : { log: await plainLog(file), attachments: new Map<string, Blob>() };
  const lines = log.split('\n').filter((line) => line !== '');
  const answer = await ask('job', { log });
  if (!answer.ok) {
    throw new NoJob(t('archive.noLog', { name: file.name, why: answer.problems.map((p) => p.message).join(' ') }));
  }
  const state = answer.result;
  if (state.findings.length > 0) {
    throw new NoJob(t('archive.damaged', { name: file.name, why: state.findings.join(' ') }));
  }
  const named = new Map(state.attachments.map((a) => [a.body.sha256, a.body.mediaType]));
  const stored: StoredAttachment[] = [];
  for (const [hash, bytes] of attachments) {
    if ((await sha256(await bytes.arrayBuffer())) !== hash) {
      throw new NoJob(t('archive.wrongHash', { name: file.name, hash: hash.slice(0, 12) }));
    }
    const mediaType = named.get(hash) ?? 'application/octet-stream';
    stored.push({ sha256: hash, job: state.job, mediaType, bytes: new Blob([bytes], { type: mediaType }), sent: 0 });
  }
  await take(state.job, lines, 0, stored);
  return state.job;
}

async function plainLog(file: File): Promise<string> {
  if (file.size > LARGEST_LOG_BYTES) {
    throw new NoJob(t('archive.tooLarge', { name: file.name, size: megabytes(file.size), most: megabytes(LARGEST_LOG_BYTES) }));
  }
  return decoded(file.name, await file.arrayBuffer());
}

function decoded(name: string, bytes: ArrayBuffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new NoJob(t('archive.wrongFile', { name }));
  }
}

interface Unpacked {
  readonly log: string;
  readonly attachments: ReadonlyMap<string, Blob>;
}

/** Unpacks piece by piece and stops at the first thing that does not belong in a job, or that grows beyond what may. */
async function unpack(file: File): Promise<Unpacked> {
  const found = new Map<string, Blob>();
  let failure: NoJob | undefined;
  let total = 0;
  const refuse = (why: string) => {
    failure ??= new NoJob(why);
  };
  const unzip = new Unzip((entry) => receive(entry));
  unzip.register(UnzipInflate);
  unzip.register(UnzipPassThrough);

  function receive(entry: UnzipFile): void {
    if (entry.name.endsWith('/')) {
      return;
    }
    const isLog = /^[a-z0-9-]+\.job\.jsonl$/.test(entry.name);
    if ((!isLog && !ATTACHMENT.test(entry.name)) || found.has(entry.name) || found.size >= MOST_FILES) {
      refuse(t('archive.strange', { name: file.name, entry: entry.name.slice(0, 80) }));
      return;
    }
    const most = isLog ? LARGEST_LOG_BYTES : LARGEST_FILE_BYTES;
    const parts: BlobPart[] = [];
    let size = 0;
    found.set(entry.name, new Blob());
    entry.ondata = (error, chunk, final) => {
      if (failure !== undefined) {
        return;
      }
      if (error !== null) {
        refuse(t('archive.broken', { name: file.name }));
        return;
      }
      size += chunk.length;
      total += chunk.length;
      if (size > most || total > LARGEST_ARCHIVE_BYTES) {
        entry.terminate();
        refuse(t('archive.bomb', { name: file.name, entry: entry.name, most: megabytes(most) }));
        return;
      }
      parts.push(new Uint8Array(chunk));
      if (final) {
        found.set(entry.name, new Blob(parts));
      }
    };
    entry.start();
  }

  const reader = file.stream().getReader();
  try {
    for (let piece = await reader.read(); failure === undefined && !piece.done; piece = await reader.read()) {
      // Small pieces, so that little is unpacked before somebody looks at how much it was.
      for (let from = 0; failure === undefined && from < piece.value.length; from += 16_384) {
        unzip.push(piece.value.subarray(from, from + 16_384), false);
      }
    }
    if (failure === undefined) {
      unzip.push(new Uint8Array(0), true);
    }
  } catch {
    refuse(t('archive.broken', { name: file.name }));
  } finally {
    await reader.cancel().catch(() => undefined);
  }
  if (failure !== undefined) {
    throw failure;
  }
  const logs = [...found.keys()].filter((name) => name.endsWith('.job.jsonl'));
  const [log] = logs;
  if (log === undefined || logs.length > 1) {
    throw new NoJob(t('archive.oneLog', { name: file.name, count: logs.length }));
  }
  const attachments = new Map([...found].flatMap(([name, bytes]) => (name === log ? [] : [[ATTACHMENT.exec(name)?.[1] ?? '', bytes]])));
  return { log: decoded(file.name, await (found.get(log) ?? new Blob()).arrayBuffer()), attachments };
}

/** Lets the person keep a file of the browser's making. */
export function save(bytes: Blob, name: string): void {
  const address = URL.createObjectURL(bytes);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
