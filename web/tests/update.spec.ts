// A new version of the app waits until somebody asks for it and no job is open, whatever the browser does with its worker meanwhile.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, expect, test, type BrowserContext, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { Editions } from './editions';
import { deviceLines, jobOf } from './device';
import { isMe, keptOffline, openBank, startJob } from './person';
import { Product } from './product';

async function note(page: Page, text: string): Promise<void> {
  await page.getByLabel('New note').fill(text);
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.locator('p', { hasText: text })).toBeVisible();
}

/** What the page is of: by its own word, and by its styles. */
async function edition(page: Page): Promise<string> {
  return page.evaluate(() => {
    const styles = getComputedStyle(document.documentElement);
    // Loaded at all?
    const touch = styles.getPropertyValue('--touch').trim();
    return `${document.documentElement.dataset['edition'] ?? 'first'} ${styles.getPropertyValue('--edition').trim() || 'first'} ${touch}`;
  });
}

/** Whether the browser has put the newest worker in the place of the one that the app came with. */
async function replaced(page: Page): Promise<boolean> {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    return registration.waiting === null && registration.installing === null && registration.active?.state === 'activated';
  });
}

async function versionsKept(page: Page): Promise<number> {
  return page.evaluate(async () => (await caches.keys()).filter((name) => name.startsWith('varwright-app-')).length);
}

function bar(page: Page) {
  return page.locator('.notice', { hasText: 'A new version is ready' });
}

async function open(profile: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, {
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    viewport: { width: 1024, height: 768 },
  });
}

test.setTimeout(180_000);

test('a new version waits for the end of the job, through reload and a closed browser, and is used when asked for', async () => {
  const editions = await Editions.before(await Product.serve());
  const profile = mkdtempSync(join(tmpdir(), 'varwright-profile-'));
  let context = await open(profile);
  let page = context.pages()[0] ?? (await context.newPage());
  await page.goto(editions.address);
  await keptOffline(context, page);
  await isMe(page, 'R. Imhof');
  await openBank(page, 'corbel-reach-3.bank.yaml');
  await startJob(page);
  const address = page.url();
  const job = jobOf(page);
  await note(page, 'rain, gate B is locked');

  await editions.publish('second');
  await page.reload();
  await expect(page.getByText('rain, gate B is locked')).toBeVisible();
  expect(await edition(page)).toBe('first first 3rem');
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await expect(bar(page)).toContainText('when these jobs are closed');
  await expect(bar(page).getByRole('link', { name: /Alarm on stage 3/ })).toBeVisible();
  await expect(bar(page).getByRole('button')).toHaveCount(0);
  await expectGood(page);

  // Every page closed: now the browser runs the worker of the second version, and the job still opens with the first.
  await context.close();
  context = await open(profile);
  page = context.pages()[0] ?? (await context.newPage());
  await page.goto(address);
  await expect(page.getByText('rain, gate B is locked')).toBeVisible();
  await expect.poll(() => replaced(page)).toBe(true);
  expect(await edition(page)).toBe('first first 3rem');
  // A forced reload goes past the worker to the server, which has only the second version.
  const tools = await context.newCDPSession(page);
  await tools.send('Page.reload', { ignoreCache: true });
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null).catch(() => false)).toBe(true);
  await expect(page.getByText('rain, gate B is locked')).toBeVisible();
  expect(await edition(page)).toBe('first first 3rem');
  // And with the radio off.
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByText('rain, gate B is locked')).toBeVisible();
  expect(await edition(page)).toBe('first first 3rem');
  await note(page, 'nothing seen from the fence');
  await context.setOffline(false);

  // The job ends; another tab is open beside.
  await page.getByRole('link', { name: /Report/ }).click();
  await page.getByRole('button', { name: 'Close the job' }).click();
  await page.getByRole('dialog').getByRole('textbox').fill('given back, nothing done');
  await page.getByRole('dialog').getByRole('button', { name: 'Close the job' }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  const lines = await deviceLines(page, job);
  const other = await context.newPage();
  await other.goto(`${editions.address}settings`);
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  const use = page.getByRole('button', { name: 'Use it now' });
  await expect(use).toBeVisible();
  await expectGood(page);
  expect(await edition(page)).toBe('first first 3rem');
  await use.click();
  await expect.poll(() => edition(page).catch(() => '')).toBe('second second 3rem');
  await expect.poll(() => edition(other).catch(() => '')).toBe('second second 3rem');
  await expect(bar(page)).toHaveCount(0);
  await expect.poll(() => versionsKept(page)).toBe(1);

  // Without a server: the second version, and the log whole.
  await other.close();
  await context.setOffline(true);
  await page.goto(address);
  await expect(page.getByText('given back, nothing done').first()).toBeVisible();
  expect(await edition(page)).toBe('second second 3rem');
  expect(await deviceLines(page, job)).toEqual(lines);
  expect(lines.length).toBe(4);
  await context.setOffline(false);

  // A version whose download is cut off is never offered.
  await editions.publish('third', { cutOff: true });
  await page.goto(editions.address);
  await expect.poll(() => editions.asked('assets/index-third000.css')).toBeGreaterThan(0);
  await expect.poll(() => replaced(page)).toBe(true);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1, name: 'Banks' })).toBeVisible();
  await expect.poll(() => versionsKept(page)).toBe(1);
  expect(await edition(page)).toBe('second second 3rem');
  await expect(bar(page)).toHaveCount(0);
  // Once it comes whole, it is.
  await editions.publish('third');
  await page.reload();
  await expect(use).toBeVisible();
  await context.close();
  await editions.end();
});
