/** Tables as spreadsheets save them, as text. */
import { megabytes } from '../store/attachments';
import { t } from '../words/words.svelte';

/** What the log takes of one table. */
export const LARGEST_TABLE_BYTES = 2_000_000;

/** A file that is no table, in words for the person who chose it. */
export class NoTable extends Error {}

/**
 * The text of a table that a person chose: UTF-8 or UTF-16 with a mark, UTF-8 without, else Windows-1252, as spreadsheets write them.
 *
 * @throws NoTable
 */
export async function tableText(file: File): Promise<string> {
  if (file.size > LARGEST_TABLE_BYTES) {
    throw new NoTable(t('table.tooLarge', { name: file.name, size: megabytes(file.size), most: megabytes(LARGEST_TABLE_BYTES) }));
  }
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new NoTable(t('files.unreadable'));
  }
  if (bytes.length === 0) {
    throw new NoTable(t('files.empty', { name: file.name }));
  }
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const { workbookText } = await import('./workbook');
    return workbookText(file.name, bytes);
  }
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) {
    throw new NoTable(t('table.oldWorkbook', { name: file.name }));
  }
  const text = decoded(bytes);
  if (text.includes('\0')) {
    throw new NoTable(t('table.notText', { name: file.name }));
  }
  return text;
}

function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) {
    return new TextDecoder('utf-16le').decode(bytes);
  }
  if (bytes[0] === 0xfe && bytes[1] === 0xff) {
    return new TextDecoder('utf-16be').decode(bytes);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
