// Readings: typed one after another with the radio off, pasted, from files of every kind, and against each other.
import { expect, test, type Page } from '@playwright/test';
import { strToU8, zipSync } from 'fflate';
import { expectGood } from './accessible';
import { Log, upload } from './logs';
import { keptOffline, openJob } from './person';
import { demoFile, Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

const capacitance = (page: Page) => page.getByRole('textbox', { name: 'Capacitance', exact: true });
const cell = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name} `) });

async function atWork(page: Page, log: Log): Promise<Log> {
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'readings');
  await expect(capacitance(page)).toBeVisible();
  return log;
}

async function chooseFile(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.locator('input[type=file]').first().setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
  await expect(page.getByRole('dialog')).toBeVisible();
}

test('typed with the radio off: verdict at once, Enter goes on, a doubt is asked again, a reload loses nothing', async ({
  page,
  context,
}) => {
  await atWork(page, (await Log.open('corbel-reach-3.bank.yaml')).toWork(['bay 3', 'bay 4']));
  await keptOffline(context, page);
  await context.setOffline(true);
  await expect(page.getByRole('heading', { name: 'stage 3/A/u1' })).toBeVisible();
  await expect(page.getByText('0 of 12 measured')).toBeVisible();

  await capacitance(page).fill('10,40');
  await page.getByRole('textbox', { name: 'Discharge resistor' }).fill('4.13');
  await page.getByRole('textbox', { name: 'Its temperature' }).fill('25');
  await capacitance(page).press('Enter');
  await expect(cell(page, 'stage 3 A u1')).toContainText('10.4 µF');
  await expect(cell(page, 'stage 3 A u1')).toContainText('healthy');
  await expect(page.getByRole('heading', { name: 'stage 3/A/u2' })).toBeVisible();
  await expect(capacitance(page)).toBeFocused();
  await expect(page.getByRole('textbox', { name: 'Its temperature' })).toHaveValue('25');

  // One section shorted: said before it is kept, and kept without ado.
  await capacitance(page).fill('14060');
  await page.getByLabel('Unit: Capacitance').selectOption('nF');
  await expect(page.getByRole('status').filter({ hasText: 'REPLACE' })).toContainText('1 of 4 sections shorted');
  await capacitance(page).press('Enter');
  await expect(cell(page, 'stage 3 A u2')).toContainText('REPLACE');

  // Links left on: asked once more, then kept as the person says.
  await page.getByLabel('Unit: Capacitance').selectOption('µF');
  await capacitance(page).fill('20.8');
  await expect(page.getByRole('button', { name: 'Look at it again' })).toBeVisible();
  await capacitance(page).press('Enter');
  await expect(page.getByRole('heading', { name: 'stage 3/B/u1' })).toBeVisible();
  await page.getByRole('button', { name: 'It shows the same again: keep it' }).click();
  await expect(cell(page, 'stage 3 B u1')).toContainText('MEASURE AGAIN');
  await expect(page.getByRole('heading', { name: 'Measure again' })).toBeVisible();

  // Half typed, then the battery is empty.
  await capacitance(page).fill('10.5');
  await page.getByRole('textbox', { name: 'Note' }).fill('dirty bushing');
  await page.reload();
  await expect(page.getByText('3 of 12 measured')).toBeVisible();
  await expect(capacitance(page)).toHaveValue('10.5');
  await expect(page.getByRole('textbox', { name: 'Note' })).toHaveValue('dirty bushing');

  // Measured again: the new one counts, the old one stays in the log.
  await cell(page, 'stage 3 B u1').click();
  await capacitance(page).fill('10.41');
  await expect(page.getByText('The earlier reading stays in the log')).toBeVisible();
  await capacitance(page).press('Enter');
  await expect(cell(page, 'stage 3 B u1')).toContainText('healthy');
  // The new reading is on disk first, the one before is taken back after it, and then the next unit stands here.
  await expect(page.getByRole('heading', { name: 'stage 3/B/u2' })).toBeVisible();
  await cell(page, 'stage 3 B u1').click();
  await expect(page.getByRole('button', { name: 'Take back' })).toHaveCount(1);
  await page.getByRole('button', { name: 'Take back' }).click();
  await page.getByRole('dialog').getByLabel('Reason').fill('wrong unit');
  await page.getByRole('dialog').getByRole('button', { name: 'Take back' }).click();
  await expect(cell(page, 'stage 3 B u1')).toContainText('not measured');

  await page.getByRole('button', { name: /^To look at: 1$/ }).click();
  await expect(cell(page, 'stage 3 A u2')).toBeVisible();
  await expect(cell(page, 'stage 3 A u1')).toHaveCount(0);
  await expectGood(page);
});

test('what can not be a reading is refused with the reason, and nothing is written', async ({ page }) => {
  const log = await atWork(page, await Log.bare('corbel-reach-3.bank.yaml'));
  for (const [typed, said] of [
    ['abc', 'abc'],
    ['10.4 V', 'V'],
    ['-3', '-3'],
    ['10,350', '10,350'],
  ] as const) {
    await capacitance(page).fill(typed);
    await capacitance(page).press('Enter');
    await expect(page.getByRole('status').filter({ hasText: '✕' })).toContainText(said);
    await expect(page.getByRole('heading', { name: 'stage 1/A' })).toBeVisible();
  }
  await page.getByText('Meter, and what is read').click();
  await page.getByLabel('Limits of error of the meter').fill('0');
  await expect(page.getByRole('alert')).toContainText('above 0 and below 20');
  await expect(page.getByText('0 of 18 measured')).toBeVisible();
  expect(log.state?.readings).toEqual([]);
});

test('tables: pasted, from a spreadsheet, with rows that can not be used, and files that are none', async ({ page }) => {
  await atWork(page, await Log.bare('corbel-reach-3.bank.yaml'));
  // Pasted into the field where one value belongs.
  await capacitance(page).focus();
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData('text/plain', 'position\tcapacitance\tserial\nstage 3/A/u1\t10,41\tCR19-0107\nstage 9/A\t10,4\t\n');
    document.activeElement?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  });
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('1 values at 1 places');
  await expect(dialog).toContainText('stage 9/A');
  await dialog.getByRole('button', { name: 'Take it in' }).click();
  await expect(cell(page, 'stage 3 A u1')).toContainText('healthy');
  await expect(page.getByText('1 of 18 measured')).toBeVisible();

  const wrong: readonly (readonly [string, Buffer, RegExp])[] = [
    ['photo.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0]), /not a table/],
    ['old.xls', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0, 0, 0, 0]), /old kind/],
    ['broken.xlsx', Buffer.from('PK\u0003\u0004 and nothing more'), /can not be read as a workbook/],
    ['empty.csv', Buffer.alloc(0), /is empty/],
    ['huge.csv', Buffer.alloc(2_100_000, 0x61), /2 MB/],
    ['letter.csv', Buffer.from('Dear Sir,\nthe bank hums.\n'), /position/],
    ['<img src=x onerror=alert(1)>.csv', Buffer.from('a,b\n1,2\n'), /position/],
  ];
  for (const [name, content, said] of wrong) {
    await chooseFile(page, name, content);
    await expect(dialog.getByRole('alert')).toContainText(said);
    await expect(dialog.getByRole('button', { name: 'Take it in' })).toBeDisabled();
    await dialog.getByRole('button', { name: 'Cancel' }).click();
  }
  await expect(page.getByText('1 of 18 measured')).toBeVisible();

  await chooseFile(page, 'visit.xlsx', workbook());
  await expect(dialog).toContainText('2 values at 2 places');
  await dialog.getByRole('button', { name: 'Take it in' }).click();
  await expect(cell(page, 'stage 3 B u1')).toContainText('10.39 µF');
  await chooseFile(page, 'readings.csv', Buffer.from(demoFile('corbel-reach-3.readings.csv')));
  await dialog.getByRole('button', { name: 'Take it in' }).click();
  await expect(page.getByText('18 of 18 measured')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Replace', exact: true })).toBeVisible();
  // Where a sentence names a row, it names the file too.
  await chooseFile(page, 'again.csv', Buffer.from(demoFile('corbel-reach-3.readings.csv')));
  await expect(dialog).toContainText('in the job already');
});

/** A workbook with a cover sheet, shared and inline strings. */
function workbook(): Buffer {
  const sheet = (rows: string) => strToU8(`<?xml version="1.0"?><worksheet><sheetData>${rows}</sheetData></worksheet>`);
  return Buffer.from(
    zipSync({
      'xl/sharedStrings.xml': strToU8('<?xml version="1.0"?><sst><si><t>position</t></si><si><t>stage 3/B/u1</t></si></sst>'),
      'xl/worksheets/sheet1.xml': sheet('<row r="1"><c r="A1" t="inlineStr"><is><t>Visit of May</t></is></c></row>'),
      'xl/worksheets/sheet2.xml': sheet(
        '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="C1" t="inlineStr"><is><t>capacitance (µF)</t></is></c></row>' +
          '<row r="2"><c r="A2" t="s"><v>1</v></c><c r="C2"><v>10.39</v></c></row>' +
          '<row r="3"><c r="A3" t="inlineStr"><is><t>stage 3/B/u2</t></is></c><c r="C3"><v>10.52</v></c></row>',
      ),
    }),
  );
}

test('two tablets read one unit differently: the job asks which holds', async ({ page }) => {
  const log = await atWork(page, await Log.bare('corbel-reach-3.bank.yaml'));
  await cell(page, 'stage 3 A u1').click();
  await capacitance(page).fill('10.40');
  await capacitance(page).press('Enter');
  await expect(cell(page, 'stage 3 A u1')).toContainText('healthy');
  log.add('reading-taken', { position: 'stage 3/A/u1', values: { capacitance: '14.0 µF' } }, 'T. Okafor', 'tablet-b');
  await upload(product.address, log);
  await page.reload();
  await expect(page.getByText('Two records disagree about readings of stage 3/A/u1')).toBeVisible();
  await expect(cell(page, 'stage 3 A u1')).toContainText('MEASURE AGAIN');
  await page.getByRole('button', { name: 'Decide' }).click();
  await page.getByRole('radio', { name: /R. Imhof/ }).check();
  await page.getByLabel('Reason').fill('the other meter was on the wrong range');
  await page.getByRole('button', { name: 'This one holds' }).click();
  await expect(page.getByText('Two records disagree')).toHaveCount(0);
  await expect(cell(page, 'stage 3 A u1')).toContainText('healthy');
});

test('how far the meter may be off is the job’s: stated on one tablet, it judges on the other, in the fit and in the report', async ({
  page,
  browser,
}) => {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  log.add('readings-imported', { file: 'readings.csv', text: demoFile('corbel-reach-3.readings.csv') });
  await atWork(page, log);
  const judged = page.getByText('Readings are judged with');
  await expect(judged).toContainText('±1 %. That is usual; nobody has stated it');
  await page.getByText('Meter, and what is read').click();
  await page.getByLabel('Limits of error of the meter').fill('3,5');
  await expect(page.getByText('±3.5 % is typed on this device and not stated in the job')).toBeVisible();
  await expect(judged).toContainText('±1 %');
  await page.getByRole('button', { name: 'State it for the whole job' }).click();
  await expect(judged).toContainText('±3.5 %.');
  await expect(judged).not.toContainText('nobody');
  await page.getByLabel('Instrument').fill('Bridge 4');
  await page.getByLabel('Limits of error of the meter').fill('0.3');
  await page.getByRole('button', { name: 'State it for Bridge 4' }).click();
  await expect(judged).toContainText('bridge 4 with ±0.3 %');
  await expect(page.getByRole('listitem').filter({ hasText: 'Every meter without' })).toContainText('±3.5 %, stated by R. Imhof');
  const doubtful = await page.getByRole('button', { name: /^To look at: / }).innerText();
  await expectGood(page);

  const two = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
  await openJob(two, product.address, log.job, 'readings');
  await expect(two.getByText('Readings are judged with')).toContainText('±3.5 %, bridge 4 with ±0.3 %');
  await expect(two.getByRole('button', { name: doubtful, exact: true })).toBeVisible();
  const chapters = two.getByRole('navigation', { name: 'From alarm to report' });
  await chapters.getByRole('link', { name: 'What to fit' }).click();
  await expect(two.getByText('Readings are judged with')).toContainText('±3.5 %');
  await chapters.getByRole('link', { name: 'Report' }).click();
  await expect(two.getByRole('listitem').filter({ hasText: 'Bridge 4' })).toContainText('±0.3 %, stated by R. Imhof');
  await two.context().close();
});

test('before the way in is done nothing can be measured, and the screen says why', async ({ page }) => {
  const log = await Log.open('lantern-mesa-1.bank.yaml');
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'readings');
  await expect(page.getByText('Units are measured when the way in is done')).toBeVisible();
  await capacitance(page).fill('5.45');
  await expect(page.getByRole('button', { name: /^Keep/ })).toBeDisabled();
});
