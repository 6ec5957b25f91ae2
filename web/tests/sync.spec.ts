// The server comes and goes; other tabs and devices write too. Nothing that was confirmed is lost, and nobody's word replaces another's.
import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import { deviceLines, jobOf, serverLines } from './device';
import { noise } from './noise';
import { doStep, stepNumber, type Hands } from './order';
import { isMe, keptOffline, openBank, startOrder } from './person';
import { Product } from './product';

const hands: Hands = {
  labels: { 'label of the bank': 'CR-BK3', 'bay 3': 'CR3-B3' },
  second: 'T. Okafor',
  wait: () => Promise.reject(new Error('this test does not wait')),
};

/** A photo goes up over a thin line, and the server dies when it has half of it; the photo's hash. */
async function killInTheMiddleOfAPhoto(page: Page, product: Product): Promise<string> {
  const buffer = await noise(page, 900);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Network.enable');
  const line = { offline: false, latency: 0, downloadThroughput: -1 };
  await devtools.send('Network.emulateNetworkConditions', { ...line, uploadThroughput: 50_000 });
  const chapters = page.getByRole('navigation', { name: 'From alarm to report' });
  await chapters.getByRole('link', { name: 'What happened' }).click();
  await page.locator('input[type=file][accept*="image"]').last().setInputFiles({ name: 'stage 3.jpg', mimeType: 'image/jpeg', buffer });
  await expect(page.getByRole('img', { name: 'stage 3.jpg' })).toBeVisible();
  const arriving = () => readdirSync(join(product.data, 'attachments')).find((name) => name.startsWith('part-')) ?? '';
  await expect.poll(arriving, { intervals: [50] }).not.toBe('');
  await product.kill();
  await devtools.send('Network.emulateNetworkConditions', { ...line, uploadThroughput: -1 });
  await chapters.getByRole('link', { name: 'Way in' }).click();
  await expect(page.locator('article.card')).toBeVisible();
  const lines = (await deviceLines(page, jobOf(page))).join();
  return /"sha256":"([0-9a-f]{64})"/.exec(lines)?.[1] ?? '';
}

test('the server is killed in the middle, the work goes on, and it gets everything when it is back', async ({ page, context }) => {
  let product = await Product.serve();
  await page.goto(product.address);
  await keptOffline(context, page);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await startOrder(page, /bay 3/);
  const job = jobOf(page);
  for (let i = 0; i < 3; i++) {
    await doStep(page, hands);
  }
  const photo = await killInTheMiddleOfAPhoto(page, product);
  for (let i = 0; i < 3; i++) {
    await doStep(page, hands);
  }
  await page.reload();
  await expect(page.locator('article.card')).toBeVisible();
  expect(await stepNumber(page)).toBe(7);
  await expect(page.getByRole('status')).toContainText('Server away');
  await doStep(page, hands);

  product = await Product.serve(product.data, product.port);
  await page.reload();
  await expect.poll(async () => (await serverLines(product, job)).length).toBe(10);
  expect((await serverLines(product, job)).sort()).toEqual((await deviceLines(page, job)).sort());
  await expect.poll(async () => (await fetch(`${product.address}api/attachments/${photo}`)).status).toBe(200);
  const whole = Buffer.from(await (await fetch(`${product.address}api/attachments/${photo}`)).arrayBuffer());
  expect(createHash('sha256').update(whole).digest('hex')).toBe(photo);
  await product.stop();
});

test('two tabs write one chain', async ({ page, context }) => {
  const product = await Product.serve();
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await startOrder(page, /bay 3/);
  const other = await context.newPage();
  await other.goto(page.url());
  await doStep(page, hands);
  await expect.poll(() => stepNumber(other)).toBe(2);
  // The same step from both at once: one stands, the other tab sees it.
  await Promise.all([page.locator('.confirm button').click(), other.locator('.confirm button').click()]);
  await expect.poll(() => stepNumber(page)).toBe(3);
  await expect.poll(() => stepNumber(other)).toBe(3);
  await expect(page.getByText('The log of this job was damaged or changed.')).toHaveCount(0);
  const lines = (await deviceLines(page, jobOf(page))).map((l) => JSON.parse(l) as { seq: number });
  expect(lines.map((l) => l.seq).sort((a, b) => a - b)).toEqual(lines.map((_, i) => i + 1));
  await product.stop();
});

test('two devices that confirmed the same step apart: both stay, and a person decides', async ({ browser }) => {
  const product = await Product.serve();
  const one = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
  await one.goto(product.address);
  await isMe(one, 'R. Imhof');
  await openBank(one, 'corbel-reach-3.bank.yaml');
  await startOrder(one, /bay 3/);
  const job = jobOf(one);
  await expect.poll(async () => (await serverLines(product, job)).length).toBe(2);

  const two = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
  await two.goto(product.address);
  await isMe(two, 'L. Brandt');
  await expect(two.getByRole('link', { name: /Alarm on stage 3|Start a job/ })).toBeVisible();
  await two.goto(`${product.address}jobs/${job}/way-in`);
  await expect(two.locator('article.card')).toBeVisible();

  // Both lose the server, both confirm step 1.
  await one.context().setOffline(true);
  await two.context().setOffline(true);
  await doStep(one, hands);
  await doStep(two, hands);
  await one.context().setOffline(false);
  await expect.poll(async () => (await serverLines(product, job)).length).toBe(3);
  await two.context().setOffline(false);
  await expect.poll(async () => (await serverLines(product, job)).length).toBe(4);

  await expect(two.getByText(/Two records disagree/)).toBeVisible({ timeout: 40_000 });
  await two.getByRole('button', { name: 'Decide' }).click();
  await two.getByRole('dialog').getByRole('radio').first().check();
  await two.getByRole('dialog').getByLabel('Reason').fill('I was second; we stood there together');
  await two.getByRole('dialog').getByRole('button', { name: 'This one holds' }).click();
  await expect(two.getByText(/Two records disagree/)).toHaveCount(0);
  await expect(one.getByText(/Two records disagree/)).toHaveCount(0, { timeout: 40_000 });
  await product.stop();
});
