// Files of every wrong kind, photos too large to open, a device without room, names with scripts in them: a clear message, and the log stays as it was.
import { createHash } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { expect, test, type CDPSession, type Page } from '@playwright/test';
import { strToU8, zipSync } from 'fflate';
import { Log, upload } from './logs';
import { noise } from './noise';
import { isMe, openJob } from './person';
import { Product } from './product';

let product: Product;
test.beforeAll(async () => {
  product = await Product.serve();
});
test.afterAll(async () => product.stop());

async function openNotes(page: Page): Promise<Log> {
  const log = await Log.bare('corbel-reach-3.bank.yaml');
  await upload(product.address, log);
  await openJob(page, product.address, log.job, 'happened');
  await expect(page.getByRole('button', { name: 'Add a photo' })).toBeVisible();
  return log;
}

/** Types of the events of a job, and the sizes of the photos, on this device. */
async function onDevice(page: Page, job: string): Promise<{ types: string[]; photos: { type: string; size: number; side: number }[] }> {
  return page.evaluate(async (name) => {
    const opened = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('varwright');
      request.onsuccess = () => resolve(request.result);
    });
    const all = <T>(store: string) =>
      new Promise<T[]>((resolve) => {
        const request = opened.transaction(store).objectStore(store).getAll();
        request.onsuccess = () => resolve(request.result as T[]);
      });
    const events = (await all<{ job: string; line: string }>('events')).filter((e) => e.job === name);
    const photos = [];
    for (const { bytes } of (await all<{ job: string; bytes: Blob }>('attachments')).filter((a) => a.job === name)) {
      const picture = await createImageBitmap(bytes);
      photos.push({ type: bytes.type, size: bytes.size, side: Math.max(picture.width, picture.height) });
    }
    opened.close();
    const lines = events.map((e) => JSON.parse(e.line) as { seq: number; type: string; device: string });
    lines.sort((a, b) => (a.device === b.device ? a.seq - b.seq : a.device === 'desk' ? -1 : 1));
    return { types: lines.map((line) => line.type), photos };
  }, job);
}

async function choosePhoto(page: Page, name: string, buffer: Buffer, mimeType = 'image/jpeg'): Promise<void> {
  await page.locator('input[type=file][accept*="image"]').last().setInputFiles({ name, mimeType, buffer });
}

/** A picture as a camera makes it. */
async function picture(page: Page, width: number, height: number): Promise<Buffer> {
  const address = await page.evaluate(
    ([w, h]) => {
      const canvas = document.createElement('canvas');
      canvas.width = w;
      canvas.height = h;
      const pen = canvas.getContext('2d');
      for (let i = 0; pen !== null && i < 40; i++) {
        pen.fillStyle = `hsl(${i * 9} 80% 50%)`;
        pen.fillRect((i * w) / 40, 0, w / 40, h);
      }
      return canvas.toDataURL('image/jpeg', 0.9);
    },
    [width, height] as const,
  );
  return Buffer.from(address.split(',')[1] ?? '', 'base64');
}

/** The first bytes of a PNG that says how large it is, and nothing behind them. */
function pngHead(width: number, height: number): Buffer {
  const bytes = Buffer.alloc(64);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}

test('photos: a good one is made smaller and kept, what is none is refused, and the log stays as it was', async ({ page }) => {
  const log = await openNotes(page);
  const wrong: readonly (readonly [string, Buffer, RegExp])[] = [
    ['letter.jpg', Buffer.from('Dear Sir'), /is not a JPEG, PNG or WebP picture/],
    ['<script>alert(1)</script>.jpg', Buffer.from('GIF89a'), /<script>alert\(1\)<\/script>\.jpg is not/],
    ['empty.jpg', Buffer.alloc(0), /is not a JPEG/],
    ['wall.png', pngHead(60_000, 60_000), /60000 × 60000 points/],
    ['torn.png', pngHead(800, 600), /is damaged/],
  ];
  for (const [name, content, said] of wrong) {
    await choosePhoto(page, name, content);
    await expect(page.getByRole('alert')).toContainText(said);
    await expect(page.getByRole('alert')).toContainText('Nothing was taken in');
  }
  const film = join(mkdtempSync(join(tmpdir(), 'varwright-film-')), 'film.jpg');
  writeFileSync(film, Buffer.alloc(60_500_000));
  await page.locator('input[type=file][accept*="image"]').last().setInputFiles(film);
  await expect(page.getByRole('alert')).toContainText('film.jpg has 61 MB');
  expect(await onDevice(page, log.job)).toEqual({ types: ['opened'], photos: [] });

  await choosePhoto(page, 'nameplate of 3B.jpg', await picture(page, 4000, 3000));
  await expect(page.getByRole('img', { name: 'nameplate of 3B.jpg' })).toBeVisible();
  const kept = await onDevice(page, log.job);
  expect(kept.types).toEqual(['opened', 'attached']);
  expect(kept.photos).toEqual([{ type: 'image/jpeg', size: kept.photos[0]?.size, side: 2000 }]);
  await page.reload();
  await expect(page.getByRole('img', { name: 'nameplate of 3B.jpg' })).toBeVisible();
  // It goes to the server as it is kept.
  await expect
    .poll(async () => {
      const lines = await (await fetch(`${product.address}api/jobs/${log.job}/events`)).text();
      const hash = /"sha256":"([0-9a-f]{64})"/.exec(lines)?.[1] ?? '';
      const response = await fetch(`${product.address}api/attachments/${hash}`);
      return (
        response.ok &&
        createHash('sha256')
          .update(Buffer.from(await response.arrayBuffer()))
          .digest('hex') === hash
      );
    })
    .toBe(true);
});

/** Sets how much the browser lets this origin keep; the browser itself then refuses to write more. */
async function room(devtools: CDPSession, bytes?: number): Promise<void> {
  const origin = new URL(product.address).origin;
  await devtools.send('Storage.overrideQuotaForOrigin', bytes === undefined ? { origin } : { origin, quotaSize: bytes });
}

test('a device without room: nothing is confirmed, and what was confirmed before is there', async ({ browser }) => {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  // Little from the start: the browser looks at the quota anew when a write is larger than what it last saw free.
  await room(devtools, 1_500_000);
  const log = await openNotes(page);
  const photo = await noise(page, 2000);
  await page.getByLabel('New note').fill('written in time');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.getByText('written in time')).toBeVisible();
  await room(devtools, 1_000);
  await choosePhoto(page, 'p.jpg', photo);
  await expect(page.getByRole('alert')).toContainText('no room left');
  await page.getByLabel('New note').fill('with a full disk');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.getByRole('alert')).toContainText('Nothing was written, and what was confirmed before is safe');
  await expect(page.getByLabel('New note')).toHaveValue('with a full disk');
  expect(await onDevice(page, log.job)).toEqual({ types: ['opened', 'noted'], photos: [] });
  await room(devtools);
  await page.getByRole('button', { name: 'Add the note' }).click();
  await expect(page.getByLabel('New note')).toHaveValue('');
  expect((await onDevice(page, log.job)).types).toEqual(['opened', 'noted', 'noted']);
  await context.close();
});

/** A ZIP with one stored or deflated file whose header says what it likes. */
function lyingZip(name: string, said: number, content: Buffer): Buffer {
  const local = Buffer.alloc(30);
  local.writeUInt32LE(0x04034b50, 0);
  local.writeUInt16LE(20, 4);
  local.writeUInt16LE(8, 8);
  local.writeUInt32LE(content.length, 18);
  local.writeUInt32LE(said, 22);
  local.writeUInt16LE(name.length, 26);
  return Buffer.concat([local, Buffer.from(name), content]);
}

test('job files: bombs, torn ones, wrong hashes and other files are refused whole', async ({ page }) => {
  const log = (await Log.bare('corbel-reach-3.bank.yaml')) as Log;
  log.add('noted', { text: 'one' });
  log.add('noted', { text: 'two' });
  const photo = Buffer.from('not really a photo');
  const hash = createHash('sha256').update(photo).digest('hex');
  const name = `${log.job}.job.jsonl`;
  const lines = log.lines.trim().split('\n');
  const good = zipSync({ [name]: strToU8(log.lines), [`attachments/${hash}`]: photo });
  const bomb = deflateRawSync(Buffer.alloc(120_000_000));
  const wrong: readonly (readonly [string, Buffer, RegExp])[] = [
    ['noise.zip', Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 7919) % 251)), /is not a job file|no job that can be read/],
    ['letter.jsonl', Buffer.from('Dear Sir,\n'), /no job that can be read/],
    ['other.zip', Buffer.from(zipSync({ 'photo.exe': strToU8('x') })), /“photo\.exe”, which does not belong/],
    ['way out.zip', Buffer.from(zipSync({ '../../attachments/x': strToU8('x') })), /does not belong/],
    ['two.zip', Buffer.from(zipSync({ [name]: strToU8(log.lines), 'b.job.jsonl': strToU8('') })), /holds 2 job logs/],
    ['none.zip', Buffer.from(zipSync({ [`attachments/${hash}`]: photo })), /holds 0 job logs/],
    ['bomb.zip', lyingZip(name, 1000, bomb), /unpacks to more than|damaged/],
    ['torn.zip', Buffer.from(good.subarray(0, Math.floor(good.length / 3))), /damaged|holds 0 job logs|no job that can be read/],
    [
      'hash.zip',
      Buffer.from(zipSync({ [name]: strToU8(log.lines), [`attachments/${hash}`]: Buffer.from('another photo') })),
      /is not what its name says/,
    ],
    ['changed.jsonl', Buffer.from(log.lines.replace('"one"', '"ten"')), /was damaged or changed/],
    ['cut.jsonl', Buffer.from(`${lines[0]}\n${lines[2]}\n`), /was damaged or changed/],
  ];
  await page.goto(product.address);
  await isMe(page, 'R. Imhof');
  for (const [file, content, said] of wrong) {
    await page.locator('input[type=file][accept*=".jsonl"]').setInputFiles({ name: file, mimeType: 'application/zip', buffer: content });
    await expect(page.getByRole('alert'), file).toContainText(said);
    await expect(page.getByRole('alert'), file).toContainText('Nothing was taken in');
  }
  expect(await onDevice(page, log.job)).toEqual({ types: [], photos: [] });
  await page
    .locator('input[type=file][accept*=".jsonl"]')
    .setInputFiles({ name: 'good.zip', mimeType: 'application/zip', buffer: Buffer.from(good) });
  await expect(page).toHaveURL(new RegExp(`/jobs/${log.job}`));
  await expect(page.getByText('two', { exact: false }).first()).toBeVisible();
});

test('scripts in names stay text, on every screen of a job', async ({ page }) => {
  const evil = '<img src=x onerror="document.title=1">';
  const bank = (await Log.bare('corbel-reach-3.bank.yaml')).state?.bankText ?? '';
  const log = await Log.of(
    bank
      .replace('name: Corbel Reach bank 3', `name: '${evil}'`)
      .replaceAll('CR19-0107', `<script>document.title=1</script>`)
      .replace(/^label: .*$/m, `label: '${evil}'`),
  );
  log.add('noted', { text: evil });
  log.add('readings-imported', { file: `${evil}.csv`, text: `position,capacitance,note\nstage 3/A/u1,10.4,"<b>x</b>"\n` });
  await upload(product.address, log);
  const called: string[] = [];
  page.on('dialog', (dialog) => {
    called.push(dialog.message());
    void dialog.dismiss();
  });
  await openJob(page, product.address, log.job, 'happened');
  for (const chapter of ['happened', 'way-in', 'people', 'readings', 'fit', 'way-back', 'report']) {
    await page.goto(`${product.address}jobs/${log.job}/${chapter}`);
    await expect(page.getByText(evil).first()).toBeVisible();
    await expect(page.locator('main img[src="x"], main script')).toHaveCount(0);
  }
  await expect(page.getByRole('heading', { name: 'Open points' })).toBeVisible();
  expect(await page.title()).not.toBe('1');
  expect(called).toEqual([]);
});
