/** Files of a disturbance record that a person chose, as `core` takes them. */
import type { RecordRequest } from '../core/core';
import { LARGEST_FILE_BYTES, megabytes, plainName } from '../store/attachments';
import { t } from '../words/words.svelte';

/** Files that are no record, in words for the person who chose them. */
export class NoRecord extends Error {}

export interface RecordFiles {
  /** Of the record as a whole: its name without an ending. */
  readonly name: string;
  readonly files: readonly File[];
  /** The file with the samples. */
  readonly data: File;
  readonly request: RecordRequest;
}

function ending(file: File): string {
  return /\.([a-z]+)$/i.exec(file.name)?.[1]?.toLowerCase() ?? '';
}

/**
 * A record of the files chosen: one `.cff`, or a `.cfg` with its `.dat`, and `.hdr` and `.inf` where there are.
 *
 * @throws NoRecord
 */
export async function recordFiles(chosen: readonly File[]): Promise<RecordFiles> {
  const of = (name: string) => chosen.filter((file) => ending(file) === name);
  for (const name of ['cff', 'cfg', 'dat', 'hdr', 'inf']) {
    if (of(name).length > 1) {
      throw new NoRecord(t('record.twice', { kind: `.${name}` }));
    }
  }
  const large = chosen.find((file) => file.size > LARGEST_FILE_BYTES);
  if (large !== undefined) {
    throw new NoRecord(t('files.tooLarge', { name: large.name, size: megabytes(large.size), most: megabytes(LARGEST_FILE_BYTES) }));
  }
  const [cff] = of('cff');
  const [cfg] = of('cfg');
  const [dat] = of('dat');
  const [hdr] = of('hdr');
  const [inf] = of('inf');
  if (cff !== undefined) {
    return { name: plainName(cff.name), files: [cff], data: cff, request: { cff: await base64(cff) } };
  }
  if (cfg === undefined || dat === undefined) {
    throw new NoRecord(
      cfg === undefined && dat === undefined
        ? t('record.none', { names: chosen.map((file) => file.name).join(', ') })
        : t('record.half', { have: (cfg ?? dat)?.name ?? '', missing: cfg === undefined ? '.cfg' : '.dat' }),
    );
  }
  return {
    name: plainName(cfg.name),
    files: [cfg, dat, ...(hdr === undefined ? [] : [hdr]), ...(inf === undefined ? [] : [inf])],
    data: dat,
    request: {
      cfgBytes: await base64(cfg),
      dat: await base64(dat),
      ...(hdr === undefined ? {} : { hdr: await hdr.text() }),
      ...(inf === undefined ? {} : { inf: await inf.text() }),
    },
  };
}

async function base64(file: Blob): Promise<string> {
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new NoRecord(t('files.unreadable'));
  }
  const pieces: string[] = [];
  // Whole threes, so that the pieces can be joined.
  for (let from = 0; from < bytes.length; from += 0x6000) {
    pieces.push(btoa(String.fromCharCode(...bytes.subarray(from, from + 0x6000))));
  }
  return pieces.join('');
}
