import { expect, test } from '@playwright/test';
import { doAll, type Hands } from './order';

const hands: Hands = {
  labels: { 'label of the bank': 'CR-BK3', 'bay 3': 'CR3-B3' },
  second: 'T. Okafor',
  wait: async (page) => page.clock.fastForward('10:00'),
};

test('way in and way back', async ({ page }) => {
  page.on('pageerror', (e) => console.log('PAGE ERROR', e.message));
  page.on('console', (m) => { if (m.type() === 'error') console.log('CONSOLE', m.text()); });
  await page.clock.install();
  await page.goto(process.env['LOOK'] ?? '/');
  await page.getByLabel('Your name').fill('R. Imhof');
  await page.getByRole('button', { name: 'This is me' }).click();
  await page.getByRole('link', { name: 'Corbel Reach bank 3' }).click();
  await page.getByRole('button', { name: 'Start a job' }).click();
  await page.getByRole('link', { name: /Way in/ }).click();
  await page.getByRole('checkbox', { name: /bay 3/ }).check();
  await page.getByLabel('In service, as its file says').check();
  await page.getByLabel('What for?').fill('units to be measured');
  await page.getByRole('button', { name: 'Make the order of work' }).click();
  await expect(page.locator('article.card')).toBeVisible({ timeout: 60_000 });
  await page.screenshot({ path: '/tmp/wd/a.png', fullPage: true });
  console.log(await doAll(page, hands));
  await page.screenshot({ path: '/tmp/wd/b.png', fullPage: true });
});
