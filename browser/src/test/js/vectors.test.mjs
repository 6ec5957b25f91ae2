// Runs the shared vectors through core as the browser has it. The JVM runs the same files (VectorsGoldenTest).
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import test from 'node:test';
import * as core from '../../../target/js/varwright-core.mjs';

const root = fileURLToPath(new URL('../../../../', import.meta.url));
const vectors = join(root, 'core/src/test/resources/vectors');

/** {"$file": PATH} stands for the text of a file of the project. */
function expand(value) {
  if (Array.isArray(value)) return value.map(expand);
  if (value && typeof value === 'object') {
    if (typeof value.$file === 'string') return readFileSync(join(root, value.$file), 'utf8');
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, expand(v)]));
  }
  return value;
}

/** Numbers to 1e-9 relative (1e-12 absolute near zero), everything else exactly. */
function same(actual, expected, path) {
  if (typeof expected === 'number') {
    assert.equal(typeof actual, 'number', `${path}: ${actual} for ${expected}`);
    const allowed = Math.max(1e-12, 1e-9 * Math.abs(expected));
    assert.ok(Math.abs(actual - expected) <= allowed, `${path}: ${actual} for ${expected}`);
  } else if (Array.isArray(expected)) {
    assert.ok(Array.isArray(actual), `${path}: not an array`);
    assert.equal(actual.length, expected.length, `${path}: length`);
    expected.forEach((item, i) => same(actual[i], item, `${path}[${i}]`));
  } else if (expected && typeof expected === 'object') {
    assert.deepEqual(Object.keys(actual ?? {}), Object.keys(expected), `${path}: members`);
    for (const key of Object.keys(expected)) same(actual[key], expected[key], `${path}.${key}`);
  } else {
    assert.equal(actual, expected, path);
  }
}

let count = 0;
for (const file of readdirSync(vectors).filter((name) => name.endsWith('.json')).sort()) {
  for (const vector of JSON.parse(readFileSync(join(vectors, file), 'utf8'))) {
    count++;
    test(`${file}: ${vector.name}`, () => {
      const answer = JSON.parse(core.run(JSON.stringify(expand(vector.request))));
      same(answer, vector.response, '$');
    });
  }
}
test('there are vectors', () => assert.ok(count > 0));
