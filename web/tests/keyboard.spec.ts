// A job without a pointer: everything is reached by Tab and done by Space, Enter and typing.
import { expect, test, type Locator, type Page } from '@playwright/test';
import { stepNumber } from './order';
import { openBank } from './person';
import { Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

/** Tabs on until that has the focus; nobody is asked to press it a hundred times. */
async function tabTo(page: Page, to: Locator): Promise<void> {
  for (let i = 0; i < 100; i++) {
    if (await to.evaluate((node) => node === document.activeElement)) {
      return;
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard does not reach ${String(to)}`);
}

async function type(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, page.getByLabel(label, { exact: true }));
  await page.keyboard.type(text);
}

async function press(page: Page, name: string): Promise<void> {
  await tabTo(page, page.getByRole('button', { name, exact: true }));
  await page.keyboard.press('Enter');
}

test('from the first visit to the third step of the way in, a stop and on again', async ({ page }) => {
  await page.goto(product.address);
  await type(page, 'Your name', 'R. Imhof');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Your name')).toHaveCount(0);
  // A file is chosen in the browser's own window, which a test can't reach by keyboard.
  await openBank(page, 'corbel-reach-3.bank.yaml');

  await press(page, 'Start a job');
  await type(page, 'Title', 'Alarm on stage 3');
  await press(page, 'Start');
  await expect(page).toHaveURL(/\/jobs\//);
  await tabTo(page, page.getByRole('link', { name: /Way in/ }).first());
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('checkbox', { name: /^bay 3/ }));
  await page.keyboard.press('Space');
  await tabTo(page, page.getByRole('radio', { name: 'In service, as its file says' }));
  await page.keyboard.press('Space');
  await type(page, 'What for?', 'units to be measured');
  await press(page, 'Make the order of work');

  const card = page.locator('article.card');
  await expect(card).toBeVisible({ timeout: 60_000 });
  for (let step = 1; step <= 2; step++) {
    expect(await stepNumber(page)).toBe(step);
    for (const box of await card.getByRole('checkbox').all()) {
      await tabTo(page, box);
      await page.keyboard.press('Space');
    }
    if (step === 1) {
      await type(page, 'Label', 'CR-BK3');
      await type(page, 'Second person', 'T. Okafor');
    }
    await tabTo(page, card.locator('.confirm button'));
    await page.keyboard.press('Enter');
    await expect.poll(() => stepNumber(page)).toBe(step + 1);
    // The next step is read from its beginning, not from the top of the page.
    await expect(card.locator('.text')).toBeFocused();
  }

  await press(page, 'STOP');
  await type(page, 'Reason', 'somebody walked in');
  await page.keyboard.press('Tab');
  await tabTo(page, page.getByRole('dialog').getByRole('button', { name: 'STOP' }));
  await page.keyboard.press('Enter');
  await expect(page.getByText('STOPPED: somebody walked in')).toBeVisible();
  await press(page, 'Go on');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
});
