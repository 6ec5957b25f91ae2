// A bank on the screen: looked at, checked, edited; with what people get wrong.
import { expect, test, type Page } from '@playwright/test';
import { expectGood } from './accessible';
import { expectReadableDrawing } from './contrast';
import { deviceLines, jobOf } from './device';
import { isMe, openBank, startJob } from './person';
import { demoFile, Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

async function atBank(page: Page, file = 'corbel-reach-3.bank.yaml'): Promise<void> {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  await openBank(page, file);
}

/** The page hears of another scheme a moment after the browser has it. */
async function expectGround(page: Page, judge: (luminance: number) => void): Promise<void> {
  await expect(async () => judge(await expectReadableDrawing(page))).toPass();
}

test('every tab of a bank is whole at every size', async ({ page }) => {
  await atBank(page);
  await expect(page.locator('.drawing svg')).toBeVisible();
  await expectGood(page);
  // White paper by day and in print, dark by night.
  await expectGround(page, (luminance) => expect(luminance).toBe(1));
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectGround(page, (luminance) => expect(luminance).toBeLessThan(0.02));
  await page.emulateMedia({ colorScheme: 'dark', media: 'print' });
  await expectGround(page, (luminance) => expect(luminance).toBe(1));
  await page.emulateMedia({ colorScheme: 'light', media: 'screen' });
  for (const tab of ['Units', 'Switches and keys', 'Checks', 'History', 'Edit']) {
    await page.getByRole('link', { name: tab, exact: true }).click();
    await expect(page.getByRole('link', { name: tab, exact: true })).toHaveAttribute('aria-current', 'page');
    await expectGood(page);
  }
});

test('checks show their basis, and what the keys do not enforce', async ({ page }) => {
  await atBank(page);
  await page.getByRole('link', { name: 'Checks' }).click();
  const discharge = page.locator('section', { has: page.getByRole('heading', { name: 'Waiting and stored energy' }) });
  await discharge.getByRole('button', { name: 'Work it out' }).click();
  await expect(discharge.getByText(/\d+ pass/)).toBeVisible();
  await discharge.locator('summary').first().click();
  await expect(discharge.getByText(/Source:/).first()).toBeVisible();
  const keys = page.locator('section', { has: page.getByRole('heading', { name: 'What the keys enforce' }) });
  await keys.getByRole('button', { name: 'Work it out' }).click();
  await expect(keys.getByText('NOT ENFORCED').first()).toBeVisible({ timeout: 60_000 });

  // All in turn says which one of how many, and ends where it is stopped.
  await page.getByRole('button', { name: 'Work all 7 out' }).click();
  const far = page.getByText(/Study \d of 7/);
  await expect(far).toBeVisible();
  await expect(page.getByRole('progressbar')).toBeVisible();
  // The simulations of the fourth take seconds.
  await expect(far).toHaveText('Study 4 of 7: Switching on');
  await page.getByRole('button', { name: 'Stop it' }).first().click();
  await expect(far).toHaveCount(0);
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  await expect(page.getByText(/\d+ fail, \d+ to look at, \d+ pass/)).toHaveCount(2);
});

test('a stage with two relays of one kind shows the settings of both, and at which side they are', async ({ page }) => {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  const first = '{stage: stage 3, senses: neutral-voltage, ratio: "7200:120", alarm: 4 V, trip: 12 V, delay: 0.5 s}';
  const text = demoFile('corbel-reach-3.bank.yaml');
  expect(text).toContain(first);
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'x.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from(
        text.replace(first, `${first}\n  - ${first.replace('4 V', '240 V').replace('12 V', '900 V').replace('}', ', primary: true}')}`),
      ),
    });
  const relays = page.getByRole('region', { name: 'Protection' }).getByRole('row', { name: 'stage 3' });
  await expect(relays).toHaveCount(2);
  await expect(relays.first()).toContainText('4 V');
  await expect(relays.first()).toContainText('at the relay');
  await expect(relays.last()).toContainText('240 V');
  await expect(relays.last()).toContainText('primary');
  await expect(page.getByRole('region', { name: 'Controller' })).toContainText('0.94');
  await expect(page.locator('.drawing svg')).toBeVisible();
});

test('a study that runs holds up nothing, and ends when one leaves', async ({ page }) => {
  await atBank(page);
  await page.getByRole('link', { name: 'Checks' }).click();
  const keys = page.locator('section', { has: page.getByRole('heading', { name: 'What the keys enforce' }) });
  const another = page.waitForEvent('worker');
  await keys.getByRole('button', { name: 'Work it out' }).click();
  const worker = await another;
  const ended = new Promise((resolve) => worker.once('close', resolve));
  await page.getByRole('button', { name: 'Start a job' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Title').fill('Alarm while a study runs');
  await dialog.getByRole('button', { name: 'Start' }).click();
  await expect(page).toHaveURL(/\/jobs\//);
  await ended;
});

test('the editor checks as one types, jumps to the place, and loses nothing', async ({ page }) => {
  await atBank(page);
  await page.getByRole('link', { name: 'Edit' }).click();
  const text = page.getByRole('textbox', { name: 'The bank file' });
  const before = await text.inputValue();
  expect(before).toBe(demoFile('corbel-reach-3.bank.yaml'));
  await text.fill(before.replace('short-circuit:', 'short-circut:'));
  const finding = page.getByRole('listitem').filter({ hasText: 'short-circut' });
  await expect(finding).toContainText('short-circuit');
  await expect(page.getByRole('button', { name: 'Save' })).toBeDisabled();
  await finding.getByRole('button').click();
  await expect(text).toBeFocused();
  await page.reload();
  await expect(text).toHaveValue(/short-circut:/);
  await page.getByRole('button', { name: 'Discard changes' }).click();
  await expect(text).toHaveValue(before);

  // A value changed in the form changes that value in the text and nothing else.
  const site = page.getByLabel('site', { exact: true });
  await site.fill('Corbel Reach: water works # 2');
  await site.press('Tab');
  const after = await text.inputValue();
  expect(after.split('\n').length).toBe(before.split('\n').length);
  expect(after.split('\n').filter((l, i) => l !== before.split('\n')[i])).toEqual(['site: "Corbel Reach: water works # 2"']);
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved on this device.')).toBeVisible();
  await page.getByRole('link', { name: 'Overview' }).click();
  await expect(page.getByText('Corbel Reach: water works # 2', { exact: true })).toBeVisible();
});

test('a file of a bank that is already here asks before it takes its place, and jobs keep theirs', async ({ page }) => {
  await atBank(page);
  await startJob(page);
  const job = page.url();
  const input = page.locator('input[type=file]').first();
  const before = demoFile('corbel-reach-3.bank.yaml');
  const after = before.replace('site: Corbel Reach water works', 'site: Corbel Reach north yard');
  expect(after).not.toBe(before);
  const give = (content: string) =>
    input.setInputFiles({ name: 'yard.bank.yaml', mimeType: 'application/yaml', buffer: Buffer.from(content) });
  const dialog = page.getByRole('dialog');
  const kept = async () => {
    await page.getByRole('link', { name: 'Edit', exact: true }).click();
    return page.getByRole('textbox', { name: 'The bank file' }).inputValue();
  };

  // The same file again is no question.
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await give(before);
  await expect(page).toHaveURL(/\/banks\/corbel-reach/);
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await give(after);
  await expect(dialog.getByRole('heading')).toContainText('Corbel Reach bank 3 is already on this device');
  const item = (name: string) => dialog.getByRole('listitem').filter({ hasText: name });
  await expect(item('Site')).toContainText('On this device: Corbel Reach water works');
  await expect(item('Site')).toContainText('yard.bank.yaml: Corbel Reach north yard');
  await expect(item('Name')).toContainText('the same in both');
  await expect(item('Units')).toContainText('18, the same in both');
  await expect(dialog).toContainText('Lines that only the file has: 1.');
  await expectGood(page);
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await expect(page).toHaveURL(/\/banks\/corbel-reach/);
  expect(await kept()).toBe(before);

  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await give(after);
  await dialog.getByRole('button', { name: 'Replace it' }).click();
  await expect(page).toHaveURL(/\/banks\/corbel-reach/);
  expect(await kept()).toBe(after);
  await page.getByRole('link', { name: 'Banks', exact: true }).click();
  await expect(page.getByRole('link', { name: 'Corbel Reach bank 3' })).toHaveCount(1);
  await page.goto(job);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Alarm on stage 3');
  const line = (await deviceLines(page, jobOf(page))).find((l) => l.includes('"opened"')) ?? '';
  expect(line).toContain('Corbel Reach water works');
});

test('a device that gets a name keeps its chain in the jobs that it has begun', async ({ page }) => {
  await atBank(page);
  await startJob(page);
  const first = jobOf(page);
  await page.getByRole('link', { name: 'Settings' }).click();
  const name = page.getByLabel('What people call this device');
  await name.fill('!!');
  await name.press('Enter');
  await expect(page.getByText('A log takes letters from a to z and digits.')).toBeVisible();
  await name.fill('Crew 2 – tablet');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(page.getByText(/In the logs it is called crew-2-tablet-[0-9a-f]{6}/)).toBeVisible();
  await expectGood(page);
  await page.goto(`${product.address}jobs/${first}/happened`);
  await page.getByLabel('New note').fill('went on');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.locator('p', { hasText: 'went on' })).toBeVisible();
  const lines = (await deviceLines(page, first)).map((l) => JSON.parse(l) as { device: string; seq: number });
  expect(lines.map((l) => l.seq).sort()).toEqual([1, 2]);
  expect(new Set(lines.map((l) => l.device)).size).toBe(1);
  expect(lines[0]?.device).toMatch(/^t-/);

  await page.goto(`${product.address}banks/corbel-reach-bank-3`);
  await startJob(page);
  expect((await deviceLines(page, jobOf(page)))[0]).toMatch(/"device":"crew-2-tablet-[0-9a-f]{6}"/);
});

test('wrong files are named and change nothing', async ({ page }) => {
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  const input = page.locator('input[type=file]').first();
  const give = async (name: string, content: Buffer) => input.setInputFiles({ name, mimeType: 'application/yaml', buffer: content });
  await give('photo.yaml', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 1, 2, 3]));
  await expect(page.getByText(/not text/)).toBeVisible();
  await give('huge.yaml', Buffer.alloc(2_100_000, 0x61));
  await expect(page.getByText(/2 MB at most/)).toBeVisible();
  await give('other.yaml', Buffer.from('shopping: [milk, bread]\n'));
  await expect(page.getByRole('alert')).toContainText('shopping');
  await give('bomb.yaml', Buffer.from('a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: [*b,*b,*b,*b,*b,*b,*b,*b,*b]\n'));
  await expect(page.getByRole('alert')).toBeVisible();
  await expect(page).toHaveURL(product.address);
});

test('scripts in names do nothing', async ({ page }) => {
  const said: string[] = [];
  page.on('dialog', (dialog) => {
    said.push(dialog.message());
    void dialog.dismiss();
  });
  await page.goto(product.address);
  await isMe(page, '<img src=x onerror=alert(1)>');
  const evil = demoFile('corbel-reach-3.bank.yaml')
    .replace('name: Corbel Reach bank 3', `name: "<script>alert(2);<svg onload=alert(3)>"`)
    .replace('site: Corbel Reach water works', `site: "</title></svg><img src=x onerror=alert(4)>"`)
    .replaceAll('bay 3', '"bay <img src=x onerror=alert(5)>"');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'x.yaml', mimeType: 'application/yaml', buffer: Buffer.from(evil) });
  await expect(page).toHaveURL(/\/banks\//);
  await expect(page.locator('.drawing svg')).toBeVisible();
  for (const tab of ['Units', 'Switches and keys', 'Edit']) {
    await page.getByRole('link', { name: tab, exact: true }).click();
  }
  await expect(page.locator('main script, main img')).toHaveCount(0);
  expect(said).toEqual([]);
});
