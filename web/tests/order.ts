// Goes through an order of work as a person would, reading what the screen asks for.
import { expect, type Page } from '@playwright/test';

/** Labels as they stand on the things, by the name that a step uses. */
export type Labels = Readonly<Record<string, string>>;

export interface Hands {
  readonly labels: Labels;
  readonly second: string;
  /** Passes the time of a wait. */
  readonly wait: (page: Page) => Promise<void>;
}

const card = (page: Page) => page.locator('article.card');

/** Number of the step on the screen. */
export async function stepNumber(page: Page): Promise<number> {
  for (const blank of await card(page).locator('.blanks').getByRole('textbox').all()) {
    await blank.fill('47');
  }
  const text = await card(page).locator('.progress').innerText();
  return Number(/\d+/.exec(text)?.[0]);
}

/** Does what the step on the screen asks for and confirms it. */
export async function doStep(page: Page, hands: Hands): Promise<void> {
  const before = await stepNumber(page);
  const start = card(page).getByRole('button', { name: /^Start the wait/ });
  if ((await start.count()) > 0) {
    await start.click();
    await expect(card(page).getByRole('timer')).toBeVisible();
    await hands.wait(page);
    await expect(card(page).locator('.notice', { hasText: 'Minimum wait over: now prove dead.' })).toBeVisible();
  }
  for (const box of await card(page).getByRole('checkbox').all()) {
    await box.check();
  }
  const text = await card(page).innerText();
  const label = card(page).getByLabel('Label', { exact: true });
  if ((await label.count()) > 0) {
    const thing = Object.keys(hands.labels).find((name) => text.includes(name)) ?? '';
    await label.fill(hands.labels[thing] ?? 'nothing');
  }
  const reading = card(page).getByLabel('What the tester or meter showed');
  if ((await reading.count()) > 0) {
    await reading.fill('0 V on A, B and C');
  }
  const count = card(page).getByLabel('How many you counted');
  if ((await count.count()) > 0) {
    const told = /\b(\d+)\b/.exec(await card(page).locator('.text').innerText())?.[1];
    await count.fill(told ?? String(await card(page).getByRole('checkbox').count()));
  }
  const second = card(page).getByLabel('Second person');
  if ((await second.count()) > 0) {
    await second.fill(hands.second);
  }
  await card(page).locator('.confirm button').click();
  // Read at once, without waiting: after the last step there is no card to wait for.
  const shown = async () => (await card(page).locator('.progress').allInnerTexts()).join();
  await expect.poll(shown, { message: `step ${before} is confirmed: ${text}` }).not.toContain(`Step ${before} of`);
}

/** Does every step that is left on this half of the order. */
export async function doAll(page: Page, hands: Hands): Promise<number> {
  let done = 0;
  while ((await card(page).count()) > 0) {
    await doStep(page, hands);
    done++;
  }
  return done;
}
