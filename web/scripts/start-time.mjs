// How long the installed app takes to show a job without a server, on a processor slowed down to that of a tablet. Prints one line; not a test.
// Usage: node scripts/start-time.mjs ADDRESS [times slower, default 4]
import { chromium } from '@playwright/test';

const [address, slower = '4'] = process.argv.slice(2);
if (address === undefined) {
  console.error('start-time: the address of a running demo is needed (./varwright demo)');
  process.exit(2);
}
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
});
const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
const page = await context.newPage();
await page.goto(address);
await page.getByLabel('Your name').fill('N. Newcomer');
await page.getByRole('button', { name: 'This is me' }).click();
await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
const job = page.locator('a[href^="/jobs/"]').first();
await job.waitFor();
const path = await job.getAttribute('href');
await context.setOffline(true);
const session = await context.newCDPSession(page);
await session.send('Emulation.setCPUThrottlingRate', { rate: Number(slower) });
const banks = [];
const steps = [];
for (let i = 0; i < 7; i++) {
  let from = Date.now();
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  banks.push(Date.now() - from);
  from = Date.now();
  await page.goto(new URL(`${path}/people`, address).href);
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  steps.push(Date.now() - from);
}
const median = (of) => of.sort((a, b) => a - b)[Math.floor(of.length / 2)];
console.log(
  `offline, processor ${slower} times slower, median of 7: banks shown after ${median(banks)} ms, a job (core loaded, log worked out) after ${median(steps)} ms`,
);
await browser.close();
