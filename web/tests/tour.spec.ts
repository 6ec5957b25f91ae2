// A newcomer with the demo: led through it without help, and every screen of it is whole.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { expectGood } from './accessible';
import { isMe } from './person';
import { Product } from './product';

let product: Product;
test.beforeAll(async () => {
  const data = mkdtempSync(join(tmpdir(), 'varwright-tour-'));
  product = await Product.start(['demo', '-o', data, '--port', '0'], data);
});
test.afterAll(async () => product.stop());

test('the first look goes through both jobs and writes nothing', async ({ page }) => {
  const trouble: string[] = [];
  page.on('pageerror', (error) => trouble.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') {
      trouble.push(message.text());
    }
  });
  await page.goto(product.address);
  await isMe(page, 'N. Newcomer');
  const before = await (await fetch(`${product.address}api/jobs`)).text();
  const strip = page.getByRole('region', { name: 'First look' });
  await strip.getByRole('button', { name: 'Show me' }).click();
  for (let stop = 1; stop <= 9; stop++) {
    await expect(strip).toContainText(`${stop} of 9`);
    await expect(page.locator('.tour-target')).toBeVisible({ timeout: 60_000 });
    await expectGood(page);
    await strip.getByRole('button', { name: stop === 9 ? 'That is all' : 'Next' }).click();
  }
  await expect(strip).toHaveCount(0);
  expect(await (await fetch(`${product.address}api/jobs`)).text()).toBe(before);
  expect(trouble).toEqual([]);
});

test('it is left and taken up again', async ({ page }) => {
  await page.goto(product.address);
  await isMe(page, 'N. Newcomer');
  const strip = page.getByRole('region', { name: 'First look' });
  await strip.getByRole('button', { name: 'Show me' }).click();
  await strip.getByRole('button', { name: 'Next' }).click();
  await expect(strip).toContainText('2 of 9');
  await page.reload();
  await expect(strip).toContainText('2 of 9');
  await strip.getByRole('button', { name: 'Leave the walk' }).click();
  await page.getByRole('link', { name: 'Settings' }).click();
  await expectGood(page);
  await page.getByRole('button', { name: 'First look, once more' }).click();
  await expect(strip).toContainText('2 of 9');
});
