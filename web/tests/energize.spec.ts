// First energization: which units were measured, and which only count as a file or a plate has them.
import { expect, test } from '@playwright/test';
import { expectGood } from './accessible';
import { Log, upload } from './logs';
import { openJob } from './person';
import { Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

test('units that nobody measured are named leg by leg beside what is expected', async ({ page }) => {
  const log = (await Log.open('corbel-reach-3.bank.yaml')).toWork(['bay 3']);
  const text = 'position,capacitance\nstage 3/A/u1,10.41 uF\nstage 3/A/u2,10.39 uF\nstage 3/B/u1,10.40 uF\n';
  log.add('readings-imported', { file: 'readings.csv', text });
  log.toService();
  log.add('measured', { place: 'bus', value: '12.4 kV' });
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'way-back');
  const panel = page.getByRole('region', { name: 'Measured in this job: 3 of 18 units' });
  await expect(panel).toContainText('Nobody measured the others');
  const leg = (name: string) => panel.getByRole('listitem').filter({ hasText: name });
  await expect(leg('stage 3/A')).toContainText('✓ stage 3/A 2 of 2 measured');
  await expect(leg('stage 3/A')).not.toContainText('by the');
  await expect(leg('stage 3/B')).toContainText('1 of 2 measured');
  await expect(leg('stage 3/B')).toContainText('by the bank file: u2');
  await expect(leg('stage 4/C')).toContainText('0 of 2 measured');
  await expect(leg('stage 4/C')).toContainText('all of them');
  await expectGood(page);
});
