// The device fails in every phase of a job: killed, its store cleared or shut, its worker dead, its server gone or empty. What was confirmed is there.
import { readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import { Tablet } from './browser';
import { deviceLines, serverLines } from './device';
import { Log, upload } from './logs';
import { doStep, stepNumber, type Hands } from './order';
import { isMe, keptOffline } from './person';
import { Product } from './product';

const hands: Hands = {
  labels: { 'label of the bank': 'CR-BK3', 'bay 3': 'CR3-B3' },
  second: 'T. Okafor',
  wait: () => Promise.reject(new Error('this test does not wait')),
};

let product: Product;
let order: Log;
let back: Log;
let bare: Log;
test.beforeAll(async () => {
  product = await Product.serve();
  order = await Log.open('corbel-reach-3.bank.yaml');
  order.add('order-made', { access: ['bay 3'], origin: { kind: 'as-found' }, reason: 'units to be measured' });
  back = await Log.open('corbel-reach-3.bank.yaml');
  back.toWork(['bay 3']);
  bare = await Log.bare('corbel-reach-3.bank.yaml');
  for (const log of [order, back, bare]) {
    await upload(product.address, log);
  }
});
test.afterAll(async () => product.stop());

/** The first visit: everything that the server has comes to the device. */
async function fetched(page: Page): Promise<void> {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await expect(page.getByRole('main').getByRole('link', { name: 'Alarm on the neutral' }).first()).toBeVisible();
  await expect(page.getByRole('status').first()).toContainText('in step');
}

interface Phase {
  readonly chapter: string;
  readonly log: Log;
  readonly act: (page: Page) => Promise<void>;
  /** What is seen when it is confirmed, and again after the kill. */
  readonly stands: (page: Page) => Promise<void>;
}

test('killed right after a confirmation, in every phase of a job, with the server gone: it comes back with each of them', async () => {
  const tablet = new Tablet();
  let page = await tablet.start();
  await fetched(page);
  await keptOffline(tablet.context, page);
  await product.kill();
  const at = order.state?.order?.next ?? 0;
  const backAt = back.state?.order?.next ?? 0;
  const phases: readonly Phase[] = [
    {
      chapter: 'happened',
      log: bare,
      act: async (p) => {
        await p.getByLabel('New note').fill('oil under stage 2');
        await p.getByRole('button', { name: 'Add the note' }).click();
      },
      stands: async (p) => expect(p.getByText('oil under stage 2')).toBeVisible(),
    },
    {
      chapter: 'way-in',
      log: order,
      act: async (p) => doStep(p, hands),
      stands: async (p) => {
        await expect(p.locator('article.card')).toBeVisible();
        await expect.poll(() => stepNumber(p)).toBe(at + 1);
      },
    },
    {
      chapter: 'readings',
      log: bare,
      act: async (p) => {
        const capacitance = p.getByRole('textbox', { name: 'Capacitance', exact: true });
        await capacitance.fill('10.40');
        await capacitance.press('Enter');
      },
      stands: async (p) => expect(p.getByText('1 of 18 measured')).toBeVisible(),
    },
    {
      chapter: 'people',
      log: back,
      act: async (p) => {
        await p.getByLabel('Your name').fill('R. Imhof');
        await p.getByRole('button', { name: 'Sign on' }).click();
      },
      stands: async (p) => expect(p.getByRole('button', { name: 'Sign off' })).toBeVisible(),
    },
    {
      chapter: 'people',
      log: back,
      act: async (p) => p.getByRole('button', { name: 'Sign off' }).click(),
      stands: async (p) => expect(p.getByText('Nobody is signed on.')).toBeVisible(),
    },
    {
      chapter: 'way-back',
      log: back,
      act: async (p) => doStep(p, hands),
      stands: async (p) => {
        await expect(p.locator('article.card')).toBeVisible();
        await expect.poll(() => stepNumber(p)).toBe(backAt + 1);
      },
    },
    {
      chapter: 'way-back',
      log: back,
      act: async (p) => {
        await p.getByLabel('Bus voltage, line to line').fill('12.4 kV');
        await p.getByRole('region', { name: 'Energized' }).getByRole('button', { name: 'Keep' }).first().click();
      },
      stands: async (p) => expect(p.locator('form strong', { hasText: '12.4 kV' })).toBeVisible(),
    },
    {
      chapter: 'report',
      log: bare,
      act: async (p) => {
        await p.getByRole('button', { name: 'Sign' }).click();
        await p.getByRole('dialog').getByLabel('Your role').fill('person in charge');
        await p.getByRole('dialog').getByRole('button', { name: 'Sign' }).click();
      },
      stands: async (p) => expect(p.locator('article.report')).toContainText('signed the log with the hash'),
    },
  ];
  for (const [i, phase] of phases.entries()) {
    await page.goto(`${product.address}jobs/${phase.log.job}/${phase.chapter}`);
    await phase.act(page);
    await phase.stands(page);
    await tablet.kill();
    page = await tablet.start();
    await page.goto(`${product.address}jobs/${phase.log.job}/${phase.chapter}`);
    await phase.stands(page);
    expect((await deviceLines(page, phase.log.job)).length, `phase ${i}`).toBeGreaterThan(phase.log.lines.split('\n').length - 1);
  }
  await expect(page.getByText('The log of this job was damaged or changed.')).toHaveCount(0);
  const held = await Promise.all([order, back, bare].map(async ({ job }) => (await deviceLines(page, job)).sort()));

  // The server is back, with all of it lost: every device gives it again what it holds.
  for (const name of readdirSync(product.data)) {
    rmSync(join(product.data, name), { recursive: true });
  }
  product = await Product.serve(product.data, product.port);
  await page.reload();
  for (const [i, { job }] of [order, back, bare].entries()) {
    await expect.poll(async () => (await serverLines(product, job)).sort(), { message: job }).toEqual(held[i]);
  }
  await tablet.stop();
});

test('the browser clears its store: under an open page the log is put back, between visits it comes from the server', async ({ page }) => {
  await fetched(page);
  await page.goto(`${product.address}jobs/${bare.job}/happened`);
  const note = async (text: string) => {
    await page.getByLabel('New note').fill(text);
    await page.getByRole('button', { name: 'Add the note' }).click();
    await expect(page.getByLabel('New note')).toHaveValue('');
    await expect(page.getByText(text)).toBeVisible();
  };
  const evict = async () => {
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Storage.clearDataForOrigin', { origin: new URL(product.address).origin, storageTypes: 'indexeddb' });
  };
  await page.context().setOffline(true);
  await note('only on this device');
  const before = await deviceLines(page, bare.job);
  await evict();
  await note('after the store was cleared');
  await expect(page.getByRole('alert').filter({ hasText: 'had cleared' })).toContainText('put back from this page');
  const after = await deviceLines(page, bare.job);
  expect(after).toEqual(expect.arrayContaining(before));
  expect(after.length).toBe(before.length + 1);
  await page.context().setOffline(false);
  await expect.poll(async () => (await serverLines(product, bare.job)).sort()).toEqual(after.sort());

  await evict();
  await page.reload();
  await isMe(page, 'R. Imhof');
  await expect(page.getByText('only on this device')).toBeVisible();
  await note('by the same tablet under a new name');
  await expect(page.getByText('The log of this job was damaged or changed.')).toHaveCount(0);
  await expect.poll(async () => (await serverLines(product, bare.job)).length).toBe(after.length + 1);
});

test('a job file that is taken in while the browser is killed is there whole or not at all', async () => {
  const tablet = new Tablet();
  let page = await tablet.start();
  await fetched(page);
  await keptOffline(tablet.context, page);
  await tablet.context.setOffline(true);
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  for (let i = 0; i < 60; i++) {
    log.add('noted', { text: `note ${i}` });
  }
  const file = { name: `${log.job}.job.jsonl`, mimeType: 'application/x-ndjson', buffer: Buffer.from(log.lines) };
  const all = log.lines.trim().split('\n').length;
  const listed = () => page.locator(`a[href="/jobs/${log.job}"]`);
  const at = [20, 150, 400];
  for (const moment of at) {
    await page.locator('input[type=file][accept*=".jsonl"]').setInputFiles(file);
    await page.waitForTimeout(moment);
    await tablet.kill();
    page = await tablet.start();
    await page.goto(product.address);
    await expect(page.getByRole('main').getByRole('link', { name: 'Alarm on the neutral' }).first()).toBeVisible();
    const there = (await deviceLines(page, log.job)).length;
    expect([0, all], `killed after ${moment} ms`).toContain(there);
    await expect(listed()).toHaveCount(there === 0 ? 0 : 1);
    await page.goto(product.address);
  }
  await tablet.context.setOffline(true);
  await page.locator('input[type=file][accept*=".jsonl"]').setInputFiles(file);
  await expect(page).toHaveURL(new RegExp(log.job));
  await expect.poll(async () => (await deviceLines(page, log.job)).length).toBe(all);
  // Off just after the lines and before the card that lists them.
  await page.evaluate(
    (job) =>
      new Promise((resolve) => {
        const request = indexedDB.open('varwright');
        request.onsuccess = () => {
          const writing = request.result.transaction('cards', 'readwrite');
          writing.objectStore('cards').delete(job);
          writing.oncomplete = () => resolve(request.result.close());
        };
      }),
    log.job,
  );
  await page.goto(product.address);
  await expect(listed()).toHaveCount(1);
  await tablet.stop();
});

test('a server on a full disk says so in its own words, and gets everything when there is room', async ({ page }) => {
  await fetched(page);
  await page.goto(`${product.address}jobs/${bare.job}/happened`);
  const before = (await serverLines(product, bare.job)).length;
  product.roomFor(1);
  await page.getByLabel('New note').fill('while its disk is full');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.getByText('while its disk is full')).toBeVisible();
  await expect(page.getByRole('status').first()).toContainText("The server can’t take anything: the disk under the server's folder");
  await expect(page.getByRole('status').first()).toContainText('1 not yet sent');
  product.roomFor();
  await page.goto(`${product.address}settings`);
  await page.getByRole('button', { name: 'Exchange with the server now' }).click();
  await expect.poll(async () => (await serverLines(product, bare.job)).length).toBe(before + 1);
  await expect(page.getByRole('status').first()).toContainText('in step');
});

test('a store that can not be opened is said at once, and so is a browser that makes no promise', async () => {
  const tablet = new Tablet();
  let page = await tablet.start();
  await fetched(page);
  await keptOffline(tablet.context, page);
  await tablet.kill();
  const folder = join(tablet.profile, 'Default', 'IndexedDB');
  renameSync(folder, `${folder}-kept`);
  writeFileSync(folder, 'a file where a folder is needed');
  page = await tablet.start();
  await page.goto(product.address);
  await expect(page.getByRole('alert')).toContainText('store of this browser can’t be opened');
  await expect(page.getByRole('alert')).toContainText('work from the printed order of work');
  await tablet.kill();
  rmSync(folder);
  renameSync(`${folder}-kept`, folder);
  page = await tablet.start();
  await page.goto(product.address);
  await expect(page.getByRole('main').getByRole('link', { name: 'Alarm on the neutral' }).first()).toBeVisible();
  // A browser that has not promised to keep the store says so while it is the only place of the work.
  await tablet.context.setOffline(true);
  await page.reload();
  await expect(page.getByText('this browser has not promised to keep its store')).toBeVisible();
  await tablet.stop();
});

test('the calculations run as WebAssembly under the policy of the server, with and without it', async ({ page, context }) => {
  const refused: string[] = [];
  page.on('console', (message) => message.text().includes('Content Security Policy') && refused.push(message.text()));
  await page.goto(`${product.address}settings`);
  await expect(page.getByText(/run as wasm/)).toBeVisible();
  await keptOffline(context, page);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByText(/run as wasm/)).toBeVisible();
  expect(refused).toEqual([]);
});

test('without WebAssembly the JavaScript computes; a worker that dies is replaced; without either the app says so', async ({ browser }) => {
  // A service worker would answer from what it keeps.
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.route('**/*.wasm', (route) => route.abort());
  await fetched(page);
  await page.goto(`${product.address}settings`);
  await expect(page.getByText(/run as js/)).toBeVisible();
  await page.goto(`${product.address}jobs/${order.job}/happened`);
  await expect(page.getByLabel('New note')).toBeVisible();
  for (const worker of page.workers()) {
    await worker.evaluate(() => {
      setTimeout(() => {
        throw new Error('out of memory');
      });
    });
  }
  await page.getByLabel('New note').fill('judged by another worker');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.getByLabel('New note')).toHaveValue('');
  await expect(page.getByText('judged by another worker')).toBeVisible();

  await page.route('**/varwright-core.mjs', (route) => route.abort());
  await page.reload();
  await expect(page.getByRole('alert').first()).toContainText('The computing part could not be loaded');
  await expect(page.getByRole('alert').first()).toContainText('work from the printed order of work');
  await context.close();
});
