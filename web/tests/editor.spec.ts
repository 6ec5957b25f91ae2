// A bank that begins on the device, and one that two people change at the same time.
import { expect, test, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { isMe, openBank } from './person';
import { demoFile, Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

const ID = 'corbel-reach-bank-3';

async function sent(page: Page): Promise<void> {
  await expect(page.getByText('Server: in step')).toBeVisible({ timeout: 40_000 });
}

/** Somebody else's change, by way of the server. */
async function changedElsewhere(from: string, to: string): Promise<void> {
  const address = `${product.address}api/banks/${ID}`;
  const now = await fetch(address);
  const put = await fetch(address, {
    method: 'PUT',
    headers: { 'content-type': 'application/yaml', 'if-match': now.headers.get('etag') ?? '', origin: new URL(product.address).origin },
    body: (await now.text()).replace(from, to),
  });
  expect(put.status).toBe(204);
}

test('a new bank begins with an example that passes, under its own name', async ({ page }) => {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await page.getByRole('button', { name: 'New bank' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('button', { name: 'Make it' })).toBeDisabled();
  await dialog.getByLabel('Name of the bank').fill('Juniper Bend: bank #1');
  await expectGood(page);
  await dialog.getByRole('button', { name: 'Make it' }).click();
  const text = page.getByRole('textbox', { name: 'The bank file' });
  await expect(text).toHaveValue(/^name: "Juniper Bend: bank #1" +#/m);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Juniper Bend: bank #1');
  // Nothing is wrong in it; what would be good to know is listed.
  await expect(page.getByRole('listitem').filter({ hasText: 'LOOK' }).first()).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'FAIL' })).toHaveCount(0);

  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await page.getByRole('button', { name: 'New bank' }).click();
  await dialog.getByLabel('Name of the bank').fill('Juniper Bend bank 1');
  await expect(dialog.getByRole('alert')).toContainText('already');
  await expect(dialog.getByRole('button', { name: 'Make it' })).toBeDisabled();
});

test('two people change one bank: both versions stay until somebody chooses', async ({ page, context }) => {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await expect.poll(async () => (await fetch(`${product.address}api/banks/${ID}`)).status, { timeout: 40_000 }).toBe(200);
  await page.getByRole('link', { name: 'Edit', exact: true }).click();
  const text = page.getByRole('textbox', { name: 'The bank file' });
  await expect(text).toHaveValue(demoFile('corbel-reach-3.bank.yaml'));

  await context.setOffline(true);
  await changedElsewhere('short-circuit: 210 MVA', 'short-circuit: 190 MVA');
  await text.fill((await text.inputValue()).replace('x-over-r: 9', 'x-over-r: 10'));
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved on this device.')).toBeVisible();
  await context.setOffline(false);

  const conflict = page.getByRole('alert').filter({ hasText: 'changed here and on the server' });
  await expect(conflict).toBeVisible({ timeout: 40_000 });
  await conflict.getByText('4 lines differ').click();
  await expect(conflict.getByText('x-over-r: 10')).toBeVisible();
  await expect(conflict.getByText('short-circuit: 190 MVA')).toBeVisible();
  await expectGood(page);

  await conflict.getByRole('button', { name: 'Take the server’s; mine becomes a draft' }).click();
  await expect(conflict).toHaveCount(0);
  await expect(text).toHaveValue(/x-over-r: 10/);
  await sent(page);
  await page.getByRole('button', { name: 'Discard changes' }).click();
  await expect(text).toHaveValue(/short-circuit: 190 MVA\n {2}x-over-r: 9\n/);

  await context.setOffline(true);
  await changedElsewhere('short-circuit: 190 MVA', 'short-circuit: 170 MVA');
  await text.fill((await text.inputValue()).replace('x-over-r: 9', 'x-over-r: 8'));
  await page.getByRole('button', { name: 'Save' }).click();
  await context.setOffline(false);
  await conflict.getByRole('button', { name: 'Mine replaces the server’s' }).click({ timeout: 40_000 });
  await sent(page);
  await expect
    .poll(async () => (await fetch(`${product.address}api/banks/${ID}`)).text())
    .toContain('short-circuit: 190 MVA\n  x-over-r: 8\n');
});

test('a bank that the server names by its file is one bank, and keeps its open jobs under a new name', async ({ page }) => {
  // As the demo has it: the file is not called as the bank is.
  const put = await fetch(`${product.address}api/banks/water-works`, {
    method: 'PUT',
    headers: { 'content-type': 'application/yaml', 'if-none-match': '*', origin: new URL(product.address).origin },
    body: demoFile('hallin-moor-2.bank.yaml'),
  });
  expect(put.status).toBe(201);
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await expect(page.getByRole('link', { name: 'Hallin Moor capacitor 2' })).toBeVisible({ timeout: 40_000 });
  await openBank(page, 'hallin-moor-2.bank.yaml');
  await expect(page).toHaveURL(/\/banks\/water-works$/);
  await page.getByRole('button', { name: 'Start a job' }).click();
  await page.getByRole('dialog').getByLabel('Title').fill('Fan noise');
  await page.getByRole('dialog').getByRole('button', { name: 'Start' }).click();
  await expect(page).toHaveURL(/\/jobs\//);
  await page.goto(`${product.address}banks/water-works/edit`);
  const name = page.getByLabel('name', { exact: true }).first();
  await name.fill('Hallin Moor, the second');
  await name.press('Tab');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved on this device.')).toBeVisible();
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await expect(page.getByRole('link', { name: 'Hallin Moor capacitor 2' })).toHaveCount(0);
  const card = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Hallin Moor, the second' }) });
  await expect(card).toContainText('no order of work yet');
});
