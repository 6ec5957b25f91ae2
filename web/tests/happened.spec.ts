// From an alarm to the order of work: what is likely, whether it may run on, what first, what to bring, where to go in.
import { expect, test, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { isMe, openBank } from './person';
import { Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

async function atJob(page: Page): Promise<void> {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await page.getByRole('button', { name: 'Start a job' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Title').fill('Alarm on stage 3');
  await dialog.getByRole('textbox', { name: 'Alarm' }).fill('59NU alarm at 14:02');
  // The battery is empty before it is begun: nothing that was typed is lost.
  await page.reload();
  await page.getByRole('button', { name: 'Start a job' }).click();
  await expect(dialog.getByLabel('Title')).toHaveValue('Alarm on stage 3');
  await dialog.getByRole('button', { name: 'Start' }).click();
  await expect(page).toHaveURL(/\/jobs\//);
}

test('an alarm leads to causes, checks that are kept, and the compartments of the order of work', async ({ page }) => {
  await atJob(page);
  const triage = page.locator('section', { has: page.getByRole('heading', { name: 'What is likely behind it, and what first?' }) });
  await expect(triage.getByRole('button', { name: 'What is likely?' })).toBeDisabled();
  await triage.getByLabel('What was reported or seen').selectOption('unbalance-alarm');
  await triage.getByLabel('Stage').selectOption('stage 3');

  // A reading without its unit is refused with what to type; nothing typed is lost.
  await page.getByLabel('Sensor').selectOption('stage 3 neutral-voltage');
  await page.getByLabel('Reading', { exact: true }).fill('5.6');
  await triage.getByRole('button', { name: 'What is likely?' }).click();
  await expect(triage.getByRole('alert')).toContainText('unit');
  await page.getByLabel('Reading', { exact: true }).fill('5.6 V');
  await page.getByLabel('New note').fill('half a sen');
  await page.reload();
  await expect(triage.getByLabel('What was reported or seen')).toHaveValue('unbalance-alarm');
  await expect(triage.getByLabel('Stage', { exact: true })).toHaveValue('stage 3');
  await expect(page.getByLabel('Reading', { exact: true })).toHaveValue('5.6 V');
  await expect(page.getByLabel('New note')).toHaveValue('half a sen');
  await expect(page.getByText('59NU alarm at 14:02')).toBeVisible();
  await triage.getByRole('button', { name: 'What is likely?' }).click();

  await expect(triage.getByRole('heading', { name: 'What may be behind it' })).toBeVisible({ timeout: 60_000 });
  await expect(triage.getByText(/It may run on only under these conditions|It may not run on|Undecided/)).toBeVisible();
  await expect(triage.getByText(/\bis safe\b/i)).toHaveCount(0);
  await triage.locator('summary').filter({ hasText: 'likely' }).first().click();
  await expect(triage.getByText('Speaks for it').first()).toBeVisible();
  const first = triage.getByRole('group', { name: 'At the bank, every door shut' }).getByRole('checkbox').first();
  await first.check();
  await expectGood(page);

  await page.reload();
  await expect(first).toBeChecked({ timeout: 60_000 });
  await expect(triage.getByLabel('What was reported or seen')).toHaveValue('unbalance-alarm');
  await triage.getByRole('button', { name: 'Write it into the job' }).click();
  await expect(page.getByText(/unbalance alarm:/).first()).toBeVisible();

  const bring = page.locator('details', { hasText: 'What to bring' });
  await bring.locator('summary').first().click();
  await bring.getByRole('checkbox').first().check();
  await expect(bring.locator('summary').first()).toContainText('1 of');

  const go = page.getByRole('button', { name: /^Make the order of work: / });
  const compartments = ((await go.textContent()) ?? '').replace(/^.*?: /, '').split(', ');
  expect(compartments).toContain('bay 3');
  await go.click();
  await expect(page).toHaveURL(/\/way-in$/);
  for (const compartment of compartments) {
    await expect(page.getByRole('checkbox', { name: new RegExp(`^${compartment.trim()}`) })).toBeChecked();
  }
});

test('a conductor of a bank tells why it is live, from the keyboard too', async ({ page }) => {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  const bus = page.getByRole('button', { name: 'Why is bus what it is?' });
  await bus.focus();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('utility feeder 21');
  await expect(dialog).toContainText('Prove it dead before you touch it');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
});

test('everything can be read in Spanish', async ({ page }) => {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByRole('radio', { name: 'Español' }).check();
  await expect(page.getByRole('heading', { level: 1, name: 'Ajustes' })).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  await expectGood(page);
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Exportar todo' }).click();
  expect((await waiting).suggestedFilename()).toMatch(/^varwright-\d{4}-\d{2}-\d{2}\.zip$/);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1, name: 'Ajustes' })).toBeVisible();
});
