// A wait on the wall clock: through a reload, a killed browser, a stop, and a clock that jumps.
import { expect, test, type Page } from '@playwright/test';
import { Tablet } from './browser';
import { doStep, stepNumber, type Hands } from './order';
import { isMe, keptOffline, openBank, startOrder } from './person';
import { Product } from './product';

const hands: Hands = {
  labels: { 'label of the bank': 'CR-BK3', 'bay 3': 'CR3-B3' },
  second: 'T. Okafor',
  wait: () => Promise.reject(new Error('this test does not wait')),
};
/** The wait of the demo bank. */
const HOLD = 11;

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

/** From nothing to the running wait. */
async function toHold(page: Page): Promise<void> {
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await startOrder(page, /bay 3/);
  while ((await stepNumber(page)) < HOLD) {
    await doStep(page, hands);
  }
  await page.getByRole('button', { name: /Start the wait/ }).click();
  await expect(page.getByRole('timer')).toBeVisible();
}

function secondsLeft(shown: string): number {
  return shown.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}

/** What the screen says when the time is over; the step itself says beforehand what to expect. */
function over(page: Page) {
  return page.locator('article.card .notice', { hasText: 'Minimum wait over: now prove dead.' });
}

async function left(page: Page): Promise<number> {
  return secondsLeft(await page.getByRole('timer').innerText());
}

test('a browser killed in a wait comes back at the same step, and the wait went on', async () => {
  const tablet = new Tablet();
  const page = await tablet.start();
  await page.goto(product.address);
  await keptOffline(tablet.context, page);
  await toHold(page);
  const address = page.url();
  const before = await left(page);
  const at = Date.now();
  await tablet.kill();

  const again = await tablet.start();
  await again.goto(address);
  await expect(again.getByRole('timer')).toBeVisible();
  expect(await stepNumber(again)).toBe(HOLD);
  const passed = (Date.now() - at) / 1000;
  // The clock went on while nothing ran; two seconds for what happens between two looks.
  expect(Math.abs(before - (await left(again)) - passed)).toBeLessThan(2);
  await expect(again.getByText(`All steps: ${HOLD - 1} of`)).toBeVisible();
  await tablet.kill();

  // The clock was set forward while the app did not run: nobody has seen it, so somebody is asked.
  const later = await tablet.start();
  await tablet.context.clock.install({ time: Date.now() + 3_600_000 });
  await later.goto(address);
  await expect(later.getByText('did not run on this device')).toBeVisible();
  await expect(over(later)).toHaveCount(0);
  await expect(later.locator('.confirm button')).toBeDisabled();
  await later.getByRole('button', { name: 'No, or not sure: start the waits anew' }).click();
  await expect(later.getByText('did not run on this device')).toHaveCount(0);
  await expect(over(later)).toHaveCount(0);
  await tablet.stop();
});

test('the end of a wait is no permission, and too early is refused', async ({ page }) => {
  await page.clock.install();
  await page.goto(product.address);
  await toHold(page);
  const confirm = page.locator('.confirm button');
  for (const box of await page.locator('article.card').getByRole('checkbox').all()) {
    await box.check();
  }
  await page.clock.fastForward('04:50');
  await expect(confirm).toBeDisabled();
  await page.reload();
  await expect(page.getByRole('timer')).toBeVisible();
  await page.clock.fastForward('00:20');
  await expect(over(page)).toBeVisible();
  await expect(over(page)).not.toContainText(/safe/i);
  await expect(confirm).toBeEnabled();
});

test('a stop starts the wait anew', async ({ page }) => {
  await page.clock.install();
  await page.goto(product.address);
  await toHold(page);
  await page.clock.fastForward('04:00');
  await page.getByRole('button', { name: 'STOP' }).click();
  await page.getByLabel('Reason').fill('somebody walked in');
  await page.getByRole('dialog').getByRole('button', { name: 'STOP' }).click();
  await expect(page.getByText('STOPPED: somebody walked in')).toBeVisible();
  await expect(page.locator('.confirm button')).toBeDisabled();
  await page.getByRole('button', { name: 'Go on' }).click();
  await page.getByLabel('Reason').fill('area is clear again');
  await page.getByRole('dialog').getByRole('button', { name: 'Go on' }).click();
  const start = page.getByRole('button', { name: /Start the wait/ });
  const timer = page.getByRole('timer');
  await expect(start.or(timer)).toBeVisible();
  if ((await timer.count()) > 0) {
    expect(await left(page)).toBeGreaterThan(290);
  }
});

test('a clock set back proves nothing', async ({ page }) => {
  await page.goto(product.address);
  await toHold(page);
  await page.evaluate(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() - 3_600_000;
  });
  await expect(page.getByText(/clock went from/)).toBeVisible();
  await page.getByRole('button', { name: 'Start the waits anew' }).click();
  await expect(page.getByText(/clock went from/)).toHaveCount(0);
  await expect(over(page)).toHaveCount(0);
  await expect(page.locator('.confirm button')).toBeDisabled();
});

test('a clock set forward is asked about, and the wait is not over while nobody has looked', async ({ page }) => {
  await page.goto(product.address);
  await toHold(page);
  await page.evaluate(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() + 3_600_000;
  });
  await expect(page.getByText(/Look at a watch/)).toBeVisible();
  await expect(over(page)).toHaveCount(0);
  await expect(page.locator('.confirm button')).toBeDisabled();
  await page.getByRole('button', { name: 'No, or not sure: start the waits anew' }).click();
  await expect(page.getByText(/Look at a watch/)).toHaveCount(0);
  await expect(over(page)).toHaveCount(0);
});
