// Runs the shared vectors in a real Chromium: core as WebAssembly and as JavaScript, in a worker, through the typed face.
import assert from 'node:assert/strict';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import test, { after, before } from 'node:test';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { same, vectors } from '../vectors.mjs';

const target = fileURLToPath(new URL('../../../target/', import.meta.url));
const folders = ['face', 'wasm', 'js'].map((name) => join(target, name));
const types = { '.js': 'text/javascript', '.mjs': 'text/javascript', '.wasm': 'application/wasm' };
const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';

let server;
let browser;
let origin;

before(async () => {
  assert.ok(existsSync(executablePath), `${executablePath} is missing: install the Debian package "chromium"`);
  server = createServer((request, response) => {
    const name = new URL(request.url, 'http://localhost').pathname.slice(1);
    if (name === '') {
      response.writeHead(200, { 'content-type': 'text/html' }).end('<!doctype html><title>vectors</title>');
      return;
    }
    const file = folders.map((folder) => join(folder, name)).find((f) => /^[\w.-]+$/.test(name) && existsSync(f));
    if (file === undefined) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': types[extname(file)] ?? 'text/plain' }).end(readFileSync(file));
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  origin = `http://127.0.0.1:${server.address().port}/`;
  browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-background-networking'] });
});

after(async () => {
  await browser?.close();
  server?.close();
});

for (const engine of ['wasm', 'js']) {
  test(`every vector through ${engine}`, async (t) => {
    const page = await browser.newPage();
    await page.goto(origin);
    const loaded = await page.evaluate(
      async ([base, wanted]) => {
        const { Core } = await import(`${base}core.js`);
        globalThis.core = await Core.start(base, new Worker(`${base}worker.js`, { type: 'module' }), wanted);
        return { engine: globalThis.core.engine, milliseconds: globalThis.core.milliseconds };
      },
      [origin, engine],
    );
    assert.equal(loaded.engine, engine);
    t.diagnostic(`${engine} loaded in ${loaded.milliseconds.toFixed(0)} ms`);
    for (const vector of vectors) {
      await t.test(vector.name, async () => {
        const answer = await page.evaluate((request) => globalThis.core.ask(request), vector.request);
        same(JSON.parse(answer), vector.response);
      });
    }
    await page.close();
  });
}

test('a task that is stopped says so, and a new worker goes on', async () => {
  const page = await browser.newPage();
  await page.goto(origin);
  const heard = await page.evaluate(async (base) => {
    const { Core, CoreFailure } = await import(`${base}core.js`);
    const start = () => Core.start(base, new Worker(`${base}worker.js`, { type: 'module' }));
    const first = await start();
    const asked = first.run('check', { bank: 'name: x' }).catch((e) => (e instanceof CoreFailure ? e.message : 'other'));
    first.stop();
    const second = await start();
    const answer = await second.run('check', { bank: 'name: x' });
    return { stopped: await asked, later: await first.ask('{}').catch((e) => e.message), ok: answer.result.ok };
  }, origin);
  assert.deepEqual(heard, { stopped: 'stopped', later: 'stopped', ok: false });
  await page.close();
});

test('where the engine can not be loaded the page is told', async () => {
  const page = await browser.newPage();
  await page.goto(origin);
  const why = await page.evaluate(async (base) => {
    const { Core } = await import(`${base}core.js`);
    return Core.start(`${base}nowhere/`, new Worker(`${base}worker.js`, { type: 'module' })).then(
      () => 'started',
      (e) => e.constructor.name,
    );
  }, origin);
  assert.equal(why, 'CoreFailure');
  await page.close();
});

test('core keeps to its size', (t) => {
  const wasm = join(target, 'wasm/varwright-core.wasm');
  const packed = gzipSync(readFileSync(wasm), { level: 9 }).length;
  t.diagnostic(`core as WebAssembly: ${statSync(wasm).size} bytes, ${packed} gzipped`);
  assert.ok(packed < 1_500_000, `${packed} bytes gzipped; a first load over a weak link must stay small`);
});
