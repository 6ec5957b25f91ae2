// The report: everything in it, signed and closed, printed without a server, made by the server, and the whole job as one file.
import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { Log, upload } from './logs';
import { isMe, openJob } from './person';
import { demoFile, Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

async function worked(): Promise<Log> {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  log.add('readings-imported', { file: 'readings.csv', text: demoFile('corbel-reach-3.readings.csv') });
  log.add('unit-moved', { serial: 'CR19-0110', from: 'stage 3/B/u2' });
  log.add('unit-moved', { serial: 'CR19-0131', to: 'stage 3/B/u2' });
  log.add('reading-taken', { position: 'stage 3/B/u2', values: { capacitance: '10.44 µF' } });
  log.add('measured', { place: 'bus', value: '12.4 kV' });
  log.add('measured', { place: 'stage 3/A', value: '56.4 A' });
  log.add('measured', { place: 'stage 3/B', value: '48.0 A' });
  log.add('noted', { text: 'Bushing of 3B cleaned.' });
  return log;
}

async function openReport(page: Page, log: Log): Promise<void> {
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'report');
  await expect(page.getByRole('heading', { name: 'Open points' })).toBeVisible();
}

test('the report has what was found, done and measured, is signed with the hash, and prints without the server', async ({
  page,
  context,
}) => {
  const log = await worked();
  await openReport(page, log);
  const report = page.locator('article.report');
  const found = report.getByRole('region', { name: 'Readings, as found' });
  await expect(found.getByRole('row', { name: /stage 3\/B\/u2/ })).toContainText('REPLACE');
  const after = report.getByRole('region', { name: 'Readings, with the units that stand there now' });
  await expect(after.getByRole('row', { name: /stage 3\/B\/u2/ })).toContainText('CR19-0131');
  await expect(after.getByRole('row', { name: /stage 3\/B\/u2/ })).toContainText('healthy');
  await expect(report.getByRole('region', { name: 'Units by serial' })).toContainText('CR19-0131: spares → stage 3/B/u2');
  const service = report.getByRole('region', { name: 'Energized: expected and measured' });
  await expect(service.getByRole('row', { name: /stage 3\/B/ })).toContainText('FAIL');
  await expect(report).toContainText('Bushing of 3B cleaned.');
  const open = report.getByRole('region', { name: 'Open points' });
  await expect(open).toContainText('Measure stage 1/B again');
  await expect(open).toContainText('bring their new places into the bank file');
  await expect(open).not.toContainText('Replace stage 3/B/u2');
  await expectGood(page);

  await context.setOffline(true);
  const hash = log.state?.hash ?? '';
  await expect(report).toContainText(hash);
  // The next visit needs no server; what can not be is refused and keeps what was typed.
  const visit = report.getByRole('region', { name: 'Next visit' });
  await expect(visit).toContainText('No date is agreed');
  await visit.getByRole('button', { name: 'Agree the visit' }).click();
  await expect(visit.getByRole('alert')).toContainText('Give the day');
  await visit.getByLabel('Day of the next visit').fill('2016-05-12');
  await visit.getByLabel('What it is for').fill('gaskets of stage 2');
  await visit.getByRole('button', { name: 'Agree the visit' }).click();
  await expect(visit.getByRole('alert')).toContainText('2016-05-12 is past');
  await page.getByRole('button', { name: 'Sign' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText(hash);
  await dialog.getByLabel('Your role').fill('person in charge');
  await dialog.getByRole('button', { name: 'Sign' }).click();
  await expect(report).toContainText(`signed the log with the hash ${hash}`);

  // On paper: the report and nothing else, on both papers.
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('navigation')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
  await expect(page.getByText('Name, role, date, signature')).toBeVisible();
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = await page.pdf({ format });
    expect(pdf.toString('latin1').match(/\/Type ?\/Page\b/g)?.length ?? 0).toBeGreaterThan(2);
  }
  await page.emulateMedia({ media: 'screen' });
  await page.getByRole('button', { name: 'PDF' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'The server is away' })).toBeVisible();

  // A day to come is taken, and the Banks screen shows it.
  await visit.getByLabel('Day of the next visit').fill('2090-05-12');
  await visit.getByRole('button', { name: 'Agree the visit' }).click();
  await expect(visit).toContainText('May 12, 2090: gaskets of stage 2');
  await visit.getByLabel('Day of the next visit').fill('2090-04-02');
  await visit.getByLabel('What it is for').fill('gaskets, sooner');
  await visit.getByRole('button', { name: 'Agree this visit instead' }).click();
  await expect(visit).toContainText('April 2, 2090: gaskets, sooner');
  await expect(visit).not.toContainText('May 12, 2090');
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  const due = page.getByRole('region', { name: 'Next visits' });
  await expect(due.getByRole('listitem')).toContainText('April 2, 2090');
  await expect(due.getByRole('listitem')).toContainText(/in \d+ days/);
  await expectGood(page);
});

test('a job is closed when nothing stands against it, and says what does', async ({ page }) => {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  log.add('reading-taken', { position: 'stage 3/A/u1', values: { capacitance: '10.4 µF' } }, 'R. Imhof', 'tablet-a');
  log.add('reading-taken', { position: 'stage 3/A/u1', values: { capacitance: '12.4 µF' } }, 'T. Okafor', 'tablet-b');
  await openReport(page, log);
  await page.getByRole('button', { name: 'Close the job' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Outcome').fill('nothing found');
  await dialog.getByRole('button', { name: 'Close the job' }).click();
  await expect(dialog.getByRole('alert')).toContainText('stage 3/A/u1');
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('button', { name: 'Decide' }).click();
  await page.getByRole('radio', { name: /R. Imhof/ }).check();
  await dialog.getByLabel('Reason').fill('wrong range');
  await page.getByRole('button', { name: 'This one holds' }).click();
  await expect(dialog).toBeHidden();
  await page.getByRole('button', { name: 'Close the job' }).click();
  await dialog.getByLabel('Outcome').fill('nothing found');
  await dialog.getByRole('button', { name: 'Close the job' }).click();
  await expect(page.getByText('Closed: nothing found')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Close the job' })).toHaveCount(0);
});

test('the whole job as one file: out of one device, into another, the same to the last event', async ({ page, browser }) => {
  const log = await worked();
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'happened');
  const picture = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 300;
    canvas.height = 200;
    return canvas.toDataURL('image/png');
  });
  await page
    .locator('input[type=file][accept*="image"]')
    .last()
    .setInputFiles({ name: 'plate.png', mimeType: 'image/png', buffer: Buffer.from(picture.split(',')[1] ?? '', 'base64') });
  await expect(page.getByRole('img', { name: 'plate.jpg' })).toBeVisible();
  await page.goto(`${product.address}jobs/${log.job}/report`);
  await expect(page.getByRole('heading', { name: 'Open points' })).toBeVisible();
  const hash = await page.locator('section', { hasText: 'Signatures' }).last().locator('.hash').first().innerText();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'The whole job as one file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe(`${log.job}.job.zip`);
  const file = readFileSync(await download.path());

  const other = await Product.serve();
  const device = await browser.newContext();
  try {
    const screen = await device.newPage();
    await screen.goto(other.address);
    await isMe(screen, 'T. Okafor');
    await screen
      .locator('input[type=file][accept*=".jsonl"]')
      .setInputFiles({ name: download.suggestedFilename(), mimeType: 'application/zip', buffer: file });
    await expect(screen).toHaveURL(new RegExp(`/jobs/${log.job}`));
    await screen.goto(`${other.address}jobs/${log.job}/report`);
    await expect(screen.locator('article.report')).toContainText(hash);
    await expect(screen.getByRole('img', { name: 'plate.jpg' })).toBeVisible();
  } finally {
    await device.close();
    await other.stop();
  }
});

test('PDF and workbook come from the server when it has everything', async ({ page }) => {
  const log = await worked();
  await openReport(page, log);
  await page.getByLabel('A4').check();
  const [pdf] = await Promise.all([page.waitForEvent('download', { timeout: 120_000 }), page.getByRole('button', { name: 'PDF' }).click()]);
  expect(
    readFileSync(await pdf.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  const [workbook] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    page.getByRole('button', { name: 'Workbook (XLSX)' }).click(),
  ]);
  expect(
    readFileSync(await workbook.path())
      .subarray(0, 2)
      .toString(),
  ).toBe('PK');
});
