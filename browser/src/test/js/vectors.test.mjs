// Runs the shared vectors through core as JavaScript, the browser's fallback.
import assert from 'node:assert/strict';
import test from 'node:test';
import * as core from '../../../target/js/varwright-core.mjs';
import { same, vectors } from '../vectors.mjs';

for (const vector of vectors) {
  test(vector.name, () => same(JSON.parse(core.run(vector.request)), vector.response));
}
test('there are vectors', () => assert.ok(vectors.length > 0));
