// A disturbance record opened on the tablet with the radio off: what it says, waveforms, phasors, into the job and out of it again.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { Log, upload } from './logs';
import { keptOffline, openJob } from './person';
import { checkout, Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

const trip = readFileSync(join(checkout, 'examples', 'demo', 'corbel-reach-3.trip.cff'));
const section = (page: Page) => page.getByRole('region', { name: 'Disturbance record' });

async function choose(page: Page, ...files: readonly (readonly [string, Buffer])[]): Promise<void> {
  await section(page)
    .locator('input[type=file]')
    .setInputFiles(files.map(([name, buffer]) => ({ name, mimeType: 'application/octet-stream', buffer })));
}

test('a record: wrong files are refused, a good one is told, seen, kept and opened again', async ({ page, context }) => {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'happened');
  await keptOffline(context, page);
  await context.setOffline(true);
  const wrong: readonly (readonly [readonly (readonly [string, Buffer])[], RegExp])[] = [
    [[['letter.txt', Buffer.from('Dear Sir')]], /none is a disturbance record/],
    [[['a.cfg', Buffer.from('x')]], /a\.cfg alone is half a record: choose its \.dat file/],
    [[['a.dat', Buffer.from('x')]], /choose its \.cfg file/],
    [
      [
        ['a.cff', Buffer.from('x')],
        ['b.cff', Buffer.from('y')],
      ],
      /two \.cff files/,
    ],
    [[['noise.cff', Buffer.from('no record at all\n'.repeat(50))]], /./],
    [[['torn.cff', trip.subarray(0, 300)]], /./],
  ];
  for (const [files, said] of wrong) {
    await choose(page, ...files);
    await expect(section(page).getByRole('alert')).toContainText(said);
    await expect(section(page).getByRole('button', { name: 'Into the job' })).toHaveCount(0);
  }

  await choose(page, ['corbel-reach-3.trip.cff', trip]);
  await expect(section(page).getByText(/Around 0\.1583 s the current of stage 3/)).toBeVisible();
  await expect(section(page).getByRole('alert')).toHaveCount(0);
  await section(page)
    .getByRole('button', { name: /^at 158\.333 ms/ })
    .first()
    .click();
  await expect(section(page).getByRole('row', { name: /^VA/ })).toContainText('7.24');
  await expect(section(page).locator('canvas')).toHaveCount(2);
  const seen = section(page).getByRole('status').filter({ hasText: ' to ' });
  const before = await seen.innerText();
  await section(page).getByRole('button', { name: 'Closer' }).click();
  await expect(seen).not.toHaveText(before);
  await section(page).getByRole('button', { name: 'One cycle on' }).click();
  await expect(section(page).getByText(/The cycle around 175\.0/)).toBeVisible();
  await expectGood(page);

  await section(page).getByRole('button', { name: 'Into the job' }).click();
  await expect(section(page).getByRole('button', { name: 'It is in the job' })).toBeDisabled();
  await page.reload();
  await section(page).getByRole('button', { name: 'Show it again' }).click();
  await expect(section(page).locator('canvas')).toHaveCount(2);
});
