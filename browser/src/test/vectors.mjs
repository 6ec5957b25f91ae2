// The shared vectors: the JVM (VectorsGoldenTest), Node and Chromium read the same files.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = join(root, 'core/src/test/resources/vectors');

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
export function same(actual, expected, path = '$') {
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

/** Every vector: name, request as JSON text, response. */
export const vectors = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .flatMap((file) =>
    JSON.parse(readFileSync(join(folder, file), 'utf8')).map((vector) => ({
      name: `${file}: ${vector.name}`,
      request: JSON.stringify(expand(vector.request)),
      response: vector.response,
    })),
  );
