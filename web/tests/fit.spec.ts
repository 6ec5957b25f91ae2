// What to fit: spares from the store, what-ifs that write nothing, lifts confirmed by the serial on the unit.
import { expect, test, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { Log, upload } from './logs';
import { openJob } from './person';
import { demoFile, Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

/** The demo's readings without the doubtful ones, so that a plan can be followed. */
function settledReadings(): string {
  return demoFile('corbel-reach-3.readings.csv')
    .split('\n')
    .filter((line) => !/^stage (1\/B|2\/C|4\/C\/u1),/.test(line))
    .join('\n');
}

async function openFit(page: Page, log: Log): Promise<void> {
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'fit');
}

async function eventsOnDevice(page: Page, job: string): Promise<readonly string[]> {
  return page.evaluate(async (name) => {
    const opened = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('varwright');
      request.onsuccess = () => resolve(request.result);
    });
    const events = await new Promise<{ job: string; line: string }[]>((resolve) => {
      const request = opened.transaction('events').objectStore('events').getAll();
      request.onsuccess = () => resolve(request.result as { job: string; line: string }[]);
    });
    opened.close();
    return events.filter((e) => e.job === name).map((e) => (JSON.parse(e.line) as { type: string }).type);
  }, job);
}

test('spares, what if, and lifts one by one by serial', async ({ page }) => {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  log.add('readings-imported', { file: 'readings.csv', text: settledReadings() });
  await openFit(page, log);
  await expect(page.getByText('Nobody has said yet that they are here')).toBeVisible();
  await expect(page.getByText(/^\d lifts\. Every limit is kept\./)).toBeVisible();
  const moves = page.getByRole('region', { name: 'Lifts, in this order' });
  await expect(moves.getByRole('listitem')).toHaveCount(4);
  // A spare that misleads is named with the reason.
  await expect(page.getByText('rated 13.28 kV, not 7.2 kV')).toBeVisible();

  // What if: the plan changes, the log does not.
  const before = (await eventsOnDevice(page, log.job)).length;
  await page.getByLabel('least unbalance').check();
  await expect(page.getByText('With what you tried')).toBeVisible();
  await page.getByLabel('Leave a unit where it is').selectOption('stage 4/C/u2');
  await expect(page.getByRole('button', { name: 'stage 4/C/u2 stays' })).toBeVisible();
  await page.getByRole('checkbox', { name: /CR19-0132/ }).uncheck();
  await expect(page.getByText(/^SPARES ARE MISSING/)).toBeVisible();
  await expect(page.getByRole('heading', { name: /To run on/ })).toBeVisible();
  await page.reload();
  await expect(page.getByText(/^SPARES ARE MISSING/)).toBeVisible();
  await page.getByRole('button', { name: 'Forget all' }).click();
  await expect(moves.getByRole('listitem')).toHaveCount(4);
  expect((await eventsOnDevice(page, log.job)).length).toBe(before);

  // The wrong unit in hand is refused before anything is written.
  await moves.getByRole('button', { name: 'Moved …' }).first().click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Serial on the unit').fill('CR19-0999');
  await expect(dialog.getByRole('alert')).toContainText('This is CR19-0999; the plan moves CR19-0110');
  await expect(dialog.getByRole('button', { name: 'It is moved' })).toBeDisabled();
  await dialog.getByLabel('Serial on the unit').fill('cr19-0110');
  await dialog.getByRole('button', { name: 'It is moved' }).click();
  await expect(moves.getByText(/moved: R. Imhof/)).toHaveCount(1);
  expect((await eventsOnDevice(page, log.job)).filter((type) => type === 'unit-moved')).toHaveLength(1);
  await page.reload();
  await expect(moves.getByText(/moved: R. Imhof/)).toHaveCount(1);
  await moves.getByRole('button', { name: 'Take back' }).click();
  await dialog.getByLabel('Reason').fill('it was lifted and set back');
  await dialog.getByRole('button', { name: 'Take back' }).click();
  await expect(moves.getByText(/moved: R. Imhof/)).toHaveCount(0);

  await page.getByText('Formulas and sources').click();
  await expect(page.getByText('FIT-2').first()).toBeVisible();
  await expectGood(page);
});

test('spares typed and opened: bad ones are refused with the reason', async ({ page }) => {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  log.add('readings-imported', { file: 'readings.csv', text: settledReadings() });
  await openFit(page, log);
  await page.getByRole('button', { name: 'Type one' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Serial on the spare').fill('CR19-0101');
  await dialog.getByLabel('Unit type on its nameplate').selectOption('V200');
  await dialog.getByLabel('Capacitance, measured').fill('10,44');
  await dialog.getByRole('button', { name: 'Add' }).click();
  await expect(dialog.getByRole('alert')).toContainText('CR19-0101');
  await dialog.getByLabel('Serial on the spare').fill('CR19-0140 "b"');
  await dialog.getByRole('button', { name: 'Add' }).click();
  await expect(page.getByRole('checkbox', { name: /CR19-0140 "b".*10.44 µF/ })).toBeVisible();
  // From now on the store is what the job says, not what the bank file says.
  await expect(page.getByRole('checkbox', { name: /CR19-0131/ })).toHaveCount(0);

  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'spares.csv', mimeType: 'text/csv', buffer: Buffer.from(demoFile('corbel-reach-3.spares.csv')) });
  await expect(dialog).toContainText('3 spares are understood');
  await dialog.getByRole('button', { name: 'Take it in' }).click();
  await expect(page.getByRole('checkbox', { name: /CR19-0131/ })).toBeVisible();
  await page.getByRole('button', { name: 'Paste a table' }).click();
  await dialog.getByRole('textbox').fill('no such thing');
  await expect(dialog.getByRole('alert')).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Take it in' })).toBeDisabled();
});

test('what is not settled is said before anything else, and nothing is lifted before the way in is done', async ({ page }) => {
  const log = await Log.open('corbel-reach-3.bank.yaml');
  log.add('readings-imported', { file: 'readings.csv', text: demoFile('corbel-reach-3.readings.csv') });
  await openFit(page, log);
  await expect(page.getByText('NOT SETTLED YET: measure again before anything is lifted')).toContainText('stage 1/B');
  await expect(page.getByText('Units are lifted only between the way in and the way back')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Moved …' }).first()).toBeDisabled();
});
