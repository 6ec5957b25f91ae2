// Every language says everything, with the same things filled in.
import { expect, test } from '@playwright/test';
import { enGB } from '../../src/words/en-GB';
import { enUS, type Key } from '../../src/words/en-US';
import { es } from '../../src/words/es';

const KEYS = Object.keys(enUS) as Key[];
/** The same word in both languages, or nothing but what is filled in. */
const SAME_IN_SPANISH = new Set<Key>([
  'app.name',
  'editor.general',
  'locate.chance',
  'locate.sensor',
  'next.stage',
  'record.fundamental',
  'replace.file',
  'report.pdf',
  'units.reactor',
  'asLeft.said',
]);

function filledIn(sentence: string): readonly string[] {
  return [...sentence.matchAll(/\{(\w+)\}/g)].map((m) => m[1] ?? '').sort();
}

for (const [name, catalogue] of Object.entries({ 'en-GB': enGB, es })) {
  test(`${name} has every sentence, with the same things filled in`, () => {
    expect(Object.keys(catalogue).sort()).toEqual([...KEYS].sort());
    for (const key of KEYS) {
      expect(catalogue[key].trim(), key).not.toBe('');
      // A thing may be named twice in one language and once in another.
      expect([...new Set(filledIn(catalogue[key]))], key).toEqual([...new Set(filledIn(enUS[key]))]);
    }
  });
}

test('nothing but names stays English in Spanish', () => {
  const same = KEYS.filter((key) => es[key] === enUS[key] && !SAME_IN_SPANISH.has(key));
  expect(same).toEqual([]);
});

test('braces are only around what is filled in', () => {
  for (const catalogue of [enUS, enGB, es]) {
    for (const key of KEYS) {
      expect(catalogue[key].replace(/\{\w+\}/g, ''), key).not.toMatch(/[{}]/);
    }
  }
});
