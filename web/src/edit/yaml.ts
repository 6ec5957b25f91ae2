/** Single values within a bank file: where they stand, and how one is replaced with everything around it left as it was. */

/** A value that can be edited in a form. */
export interface Scalar {
  /** Its keys, such as `system`, `voltage`; numbers of list items from 0. */
  readonly path: readonly (string | number)[];
  readonly value: string;
  /** Where it stands in the text. */
  readonly from: number;
  readonly to: number;
}

/** Every single value of the text that has a place, in the order of the file; none where the text can't be read at all. */
export async function scalars(text: string): Promise<readonly Scalar[]> {
  const { isMap, isScalar, isSeq, parseDocument } = await import('yaml');
  // Aliases are not followed: a small file could stand for a huge one.
  const document = parseDocument(text, { merge: false });
  if (document.errors.length > 0) {
    return [];
  }
  const found: Scalar[] = [];
  const walk = (node: unknown, path: readonly (string | number)[]): void => {
    if (isMap(node)) {
      for (const pair of node.items) {
        if (isScalar(pair.key)) {
          walk(pair.value, [...path, String(pair.key.value)]);
        }
      }
    } else if (isSeq(node)) {
      node.items.forEach((item, i) => walk(item, [...path, i]));
    } else if (isScalar(node) && node.range !== undefined && node.range !== null) {
      const [from, to] = node.range;
      if (!text.slice(from, to).includes('\n')) {
        // A plain value is a name as it stands: 0123 is no number here, and `1e3` is not a thousand.
        const value = node.type === 'PLAIN' ? (node.source ?? '') : String(node.value ?? '');
        found.push({ path, value, from, to });
      }
    }
  };
  walk(document.contents, []);
  return found;
}

/** Plain where that means the same, quoted where it would not: a colon, a hash or a brace must not change what the file says. */
export function written(value: string): string {
  const trimmed = value.trim();
  const plain = /^[\p{L}\p{N}+−.(][\p{L}\p{N} _.,%°·²³µΩ/()+−-]*$/u.test(trimmed) && !/[,\s]$/.test(trimmed);
  const word = /^(?:null|~|true|false|yes|no|on|off)$/i.test(trimmed);
  // Within a list on one line a comma ends the value.
  return plain && !word && !trimmed.includes(',') ? trimmed : `"${trimmed.replace(/[\\"]/g, (c) => `\\${c}`)}"`;
}

/** The text with one value replaced. */
export function edits(text: string, field: Scalar, value: string): string {
  const before = text.slice(0, field.from);
  const after = text.slice(field.to);
  // A place that was empty may stand right behind its colon, or right before a comment: either would swallow the value.
  const gap = /[:,-]$/.test(before) ? ' ' : '';
  const rest = after.startsWith('#') ? ' ' : '';
  return `${before}${gap}${written(value)}${rest}${after}`;
}
