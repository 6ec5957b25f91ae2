/** The first sheet of a workbook that looks like a table, as text with tabs. Values only: a formula counts by what it showed when it was saved. */
import { unzipSync } from 'fflate';
import { t } from '../words/words.svelte';
import { LARGEST_TABLE_BYTES, NoTable } from './files';

const LARGEST_PART = 20_000_000;
const MOST_SHEETS = 50;

/** @throws NoTable where it is no workbook, or none with a table */
export function workbookText(name: string, bytes: Uint8Array): string {
  let parts: Record<string, Uint8Array>;
  let seen = 0;
  try {
    // A part that says it is larger than any table of readings is not unpacked.
    parts = unzipSync(bytes, {
      filter: (file) =>
        /^xl\/(sharedStrings|worksheets\/[^/]+)\.xml$/i.test(file.name) && file.originalSize <= LARGEST_PART && ++seen <= MOST_SHEETS,
    });
  } catch {
    throw new NoTable(t('table.brokenWorkbook', { name }));
  }
  const strings = sharedStrings(parts['xl/sharedStrings.xml']);
  const sheets = Object.keys(parts)
    .filter((part) => part.startsWith('xl/worksheets/'))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  for (const sheet of sheets) {
    const text = sheetText(parse(parts[sheet]), strings);
    if (/\b(position|serial)/i.test(text)) {
      if (text.length > LARGEST_TABLE_BYTES) {
        throw new NoTable(t('table.brokenWorkbook', { name }));
      }
      return text;
    }
  }
  throw new NoTable(t('table.noSheet', { name }));
}

function parse(part: Uint8Array | undefined): Document | undefined {
  return part === undefined ? undefined : new DOMParser().parseFromString(new TextDecoder().decode(part), 'application/xml');
}

function sharedStrings(part: Uint8Array | undefined): readonly string[] {
  return [...(parse(part)?.getElementsByTagName('si') ?? [])].map((item) =>
    // A reading aid above the characters is not part of the text.
    [...item.getElementsByTagName('t')]
      .filter((run) => run.parentElement?.tagName !== 'rPh')
      .map((run) => run.textContent)
      .join(''),
  );
}

function sheetText(sheet: Document | undefined, strings: readonly string[]): string {
  const lines: string[] = [];
  for (const row of sheet?.getElementsByTagName('row') ?? []) {
    const cells: string[] = [];
    for (const cell of row.getElementsByTagName('c')) {
      const column = columnOf(cell.getAttribute('r') ?? '') ?? cells.length;
      cells[Math.min(column, 200)] = cellText(cell, strings);
    }
    lines.push(Array.from(cells, (cell) => quoted(cell ?? '')).join('\t'));
  }
  return lines.map((line) => `${line}\n`).join('');
}

function cellText(cell: Element, strings: readonly string[]): string {
  const value = cell.getElementsByTagName('v')[0]?.textContent ?? '';
  switch (cell.getAttribute('t')) {
    case 's':
      return strings[Number(value)] ?? '';
    case 'inlineStr':
      return [...cell.getElementsByTagName('t')].map((run) => run.textContent).join('');
    default:
      return value;
  }
}

/** From 0; of `C7` it is 2. */
function columnOf(reference: string): number | undefined {
  const letters = /^[A-Z]+/.exec(reference)?.[0];
  return letters === undefined ? undefined : [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function quoted(text: string): string {
  return /["\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
