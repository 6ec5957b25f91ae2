// A value changed in the form is that value in the file, and nothing else of the file is another.
import { expect, test } from '@playwright/test';
import { parseDocument } from 'yaml';
import { edits, scalars } from '../../src/edit/yaml';
import { demoFile } from '../product';

async function put(text: string, path: string, value: string): Promise<string> {
  const field = (await scalars(text)).find((f) => f.path.join('.') === path);
  expect(field, path).toBeDefined();
  return field === undefined ? text : edits(text, field, value);
}

test('an empty place takes a value, whatever stands around it', async () => {
  for (const [text, path, want] of [
    ['site:\nname: x\n', 'site', 'site: weir\nname: x\n'],
    ['site:', 'site', 'site: weir'],
    ['site: # not known\nname: x\n', 'site', 'site: weir # not known\nname: x\n'],
    ['a: {b: , c: 1}\n', 'a.b', 'a: {b: weir, c: 1}\n'],
    ['a: {b:, c: 1}\n', 'a.b', 'a: {b: weir, c: 1}\n'],
    ['a:\n  -\n  - x\n', 'a.0', 'a:\n  - weir\n  - x\n'],
  ] as const) {
    const made = await put(text, path, 'weir');
    expect(made).toBe(want);
    expect(parseDocument(made).getIn(path.split('.').map((p) => (/^\d+$/.test(p) ? Number(p) : p)))).toBe('weir');
  }
});

test('names that look like numbers are shown as they stand', async () => {
  const text = 'a: 0123\nb: 1e3\nc: "0123"\nd: 8.30\ne: off\nf: 0x1F\n';
  expect((await scalars(text)).map((f) => f.value)).toEqual(['0123', '1e3', '0123', '8.30', 'off', '0x1F']);
});

test('what is put into a file of the demo comes back as it was written, also what YAML would read as something else', async () => {
  const hard = [
    'a: b',
    'x # y',
    '[1, 2]',
    '{a}',
    '- a',
    '"',
    "it's",
    '\\n',
    '&a',
    '*a',
    '!b',
    '%c',
    '@d',
    '`',
    '? e',
    '| f',
    '> g',
    'a,b',
    '',
    ' ',
    'null',
  ];
  const text = demoFile('corbel-reach-3.bank.yaml');
  const fields = await scalars(text);
  expect(fields.length).toBeGreaterThan(100);
  const step = Math.floor(fields.length / (2 * hard.length));
  for (let i = 0; i < fields.length; i += step) {
    const field = fields[i];
    const value = hard[(i / step) % hard.length] ?? '';
    if (field === undefined) {
      break;
    }
    const again = await scalars(edits(text, field, value));
    expect(again.map((f) => f.path.join('.'))).toEqual(fields.map((f) => f.path.join('.')));
    expect(again.map((f) => f.value)).toEqual(fields.map((f, j) => (i === j ? value.trim() : f.value)));
  }
});
