/** Which lines differ between two versions of a bank file. */

export interface Change {
  /** `mine` only in the first text, `theirs` only in the second. */
  readonly side: 'mine' | 'theirs';
  /** In its own text, from 1. */
  readonly line: number;
  readonly text: string;
}

/** Beyond this the middle of the texts is shown whole: the table would take too much room. */
const MOST_CELLS = 4_000_000;

/** The smallest set of lines to take out and put in, in the order of the texts (longest common subsequence). */
export function changes(mine: string, theirs: string): readonly Change[] {
  const a = mine.split('\n');
  const b = theirs.split('\n');
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) {
    start++;
  }
  let end = 0;
  while (end < a.length - start && end < b.length - start && a[a.length - 1 - end] === b[b.length - 1 - end]) {
    end++;
  }
  const rows = a.length - start - end;
  const columns = b.length - start - end;
  const common = rows * columns > MOST_CELLS ? undefined : lengths(a.slice(start, start + rows), b.slice(start, start + columns));
  const found: Change[] = [];
  let i = 0;
  let j = 0;
  while (i < rows || j < columns) {
    const here = a[start + i] ?? '';
    const there = b[start + j] ?? '';
    if (i < rows && j < columns && here === there) {
      i++;
      j++;
    } else if (j >= columns || (i < rows && at(common, columns, i + 1, j) >= at(common, columns, i, j + 1))) {
      found.push({ side: 'mine', line: start + i + 1, text: here });
      i++;
    } else {
      found.push({ side: 'theirs', line: start + j + 1, text: there });
      j++;
    }
  }
  return found;
}

function at(table: Uint32Array | undefined, columns: number, i: number, j: number): number {
  return table?.[i * (columns + 1) + j] ?? 0;
}

/** Length of the longest common subsequence of the rests that begin at each pair of lines. */
function lengths(a: readonly string[], b: readonly string[]): Uint32Array {
  const width = b.length + 1;
  const table = new Uint32Array((a.length + 1) * width);
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--) {
      table[i * width + j] =
        a[i] === b[j]
          ? (table[(i + 1) * width + j + 1] ?? 0) + 1
          : Math.max(table[(i + 1) * width + j] ?? 0, table[i * width + j + 1] ?? 0);
    }
  }
  return table;
}
