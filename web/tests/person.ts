// The first things that anybody does in the app.
import { expect, type BrowserContext, type Page } from '@playwright/test';
import { demoFile } from './product';

export async function isMe(page: Page, name: string): Promise<void> {
  await page.getByLabel('Your name').fill(name);
  await page.getByRole('button', { name: 'This is me' }).click();
  await expect(page.getByLabel('Your name')).toHaveCount(0);
}

/** Opens a bank file of the demo as a person does: with the button. Where the server has brought another version of that bank meanwhile, the file takes its place. */
export async function openBank(page: Page, file: string): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: file, mimeType: 'application/yaml', buffer: Buffer.from(demoFile(file)) });
  const replace = page.getByRole('dialog').getByRole('button', { name: 'Replace it' });
  await expect(async () => {
    if (await replace.isVisible()) {
      await replace.click();
    }
    await expect(page).toHaveURL(/\/banks\//, { timeout: 500 });
  }).toPass();
}

/** From the page of a bank to the first step of an order of work. */
export async function startOrder(page: Page, compartment: RegExp): Promise<void> {
  await startJob(page);
  await page.getByRole('link', { name: /Way in/ }).click();
  await page.getByRole('checkbox', { name: compartment }).check();
  await page.getByLabel('In service, as its file says').check();
  await page.getByLabel('What for?').fill('units to be measured');
  await page.getByRole('button', { name: 'Make the order of work' }).click();
  await expect(page.locator('article.card')).toBeVisible({ timeout: 60_000 });
}

/** From the page of a bank to a new job. */
export async function startJob(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Start a job' }).click();
  const title = page.getByRole('dialog').getByLabel('Title');
  if ((await title.count()) > 0) {
    await title.fill('Alarm on stage 3');
    await page.getByRole('dialog').getByRole('button', { name: 'Start' }).click();
  }
  await expect(page).toHaveURL(/\/jobs\//);
}

/** Waits until the app is kept on the device and starts without a server. */
export async function keptOffline(context: BrowserContext, page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect.poll(() => context.serviceWorkers().length).toBeGreaterThan(0);
}

/** Opens a chapter of a job that the server has. */
export async function openJob(page: Page, address: string, job: string, chapter: string): Promise<void> {
  await page.goto(address);
  await isMe(page, 'R. Imhof');
  await expect(page.getByRole('link', { name: 'Alarm on the neutral' }).first()).toBeVisible();
  await page.goto(`${address}jobs/${job}/${chapter}`);
  await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
}
