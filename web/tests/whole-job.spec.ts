// A whole job from alarm to report. The radio is off from its first word to its signature.
import { expect, test } from '@playwright/test';
import { doAll, type Hands } from './order';
import { isMe, keptOffline, openBank, startOrder } from './person';
import { Product } from './product';

const hands: Hands = {
  labels: { 'label of the bank': 'CR-BK3', 'bay 3': 'CR3-B3' },
  second: 'T. Okafor',
  wait: async (page) => page.clock.fastForward('10:00'),
};

test('from alarm to signed report without a network, and the server has all of it afterwards', async ({ page, context }) => {
  test.setTimeout(420_000);
  const product = await Product.serve();
  await page.clock.install();
  await page.goto(product.address);
  await keptOffline(context, page);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await context.setOffline(true);
  await page.reload();

  await startOrder(page, /^bay 3/);
  const job = /\/jobs\/([^/]+)/.exec(page.url())?.[1] ?? '';
  const go = async (chapter: string) =>
    page.getByRole('navigation', { name: 'From alarm to report' }).getByRole('link', { name: chapter }).click();
  expect(await doAll(page, hands)).toBeGreaterThan(30);
  await expect(page.getByText('The way in is done.')).toBeVisible();

  await go('People on the bank');
  await page.getByLabel('Your name').fill('R. Imhof');
  await page.getByRole('button', { name: 'Sign on' }).click();
  await expect(page.getByRole('button', { name: 'Sign off' })).toBeVisible();

  // The way back does not begin while somebody is on the bank.
  await go('Way back');
  await expect(page.getByText(/Still on the bank: R. Imhof/)).toBeVisible();
  await go('People on the bank');
  await page.getByRole('button', { name: 'Sign off' }).click();
  await expect(page.getByText('Nobody is signed on.')).toBeVisible();

  await go('Way back');
  expect(await doAll(page, hands)).toBeGreaterThan(20);
  await expect(page.getByText('The order is done: the bank is back in service.').first()).toBeVisible();
  const left = page.getByRole('region', { name: /as left|left/i });
  await left.getByRole('radio', { name: 'auto' }).check();
  const say = left.getByRole('button');
  if ((await say.count()) > 0) {
    await say.first().click();
  }

  await go('Report');
  await expect(page.locator('article.report')).toContainText('T. Okafor');
  await expect(page.locator('article.report')).toContainText('R. Imhof');

  await context.setOffline(false);
  await page.clock.resume();
  const events = async () => {
    const response = await fetch(`${product.address}api/jobs/${job}/events`);
    return response.ok ? (await response.text()).split('\n').filter((l) => l !== '').length : 0;
  };
  await page.reload();
  await expect.poll(events, { timeout: 60_000 }).toBeGreaterThan(75);
  const stands = (await (await fetch(`${product.address}api/jobs/${job}`)).json()) as {
    findings: string[];
    notCounted: unknown[];
    order: { phase: string };
  };
  expect(stands.findings).toEqual([]);
  expect(stands.notCounted).toEqual([]);
  expect(stands.order.phase).toBe('in-service');
  await product.stop();
});
