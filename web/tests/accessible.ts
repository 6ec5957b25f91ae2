// What every screen is held against: WCAG 2.2 AA by axe-core, targets for gloves, nothing wider than the screen.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page } from '@playwright/test';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** A target of 48 px; half a pixel for rounding. */
const TARGET_PX = 47.5;

export async function expectAccessible(page: Page): Promise<void> {
  await page.evaluate(axe);
  const violations = await page.evaluate(async (rules) => {
    const { axe: engine } = globalThis as unknown as {
      axe: {
        run(
          root: Document,
          options: object,
        ): Promise<{ violations: { id: string; help: string; nodes: { html: string; failureSummary?: string }[] }[] }>;
      };
    };
    const result = await engine.run(document, { runOnly: { type: 'tag', values: rules } });
    return result.violations.map((v) => `${v.id}: ${v.help}\n${v.nodes.map((n) => `  ${n.html}\n  ${n.failureSummary ?? ''}`).join('\n')}`);
  }, RULES);
  expect(violations, violations.join('\n\n')).toEqual([]);
}

/** Every control that is shown is large enough for a glove. A tick counts with the label around it; links within sentences are read, not hit. */
export async function expectTouchable(page: Page): Promise<void> {
  const small = await page.evaluate((least) => {
    const controls = document.querySelectorAll<HTMLElement>('button, a, input, select, textarea, summary, [role=button], [tabindex="0"]');
    const found: string[] = [];
    for (const control of controls) {
      if (control.closest('p, dd, td, .skip, svg') !== null && control.tagName === 'A') {
        continue;
      }
      if (control.classList.contains('skip') || !control.checkVisibility()) {
        continue;
      }
      const hit = control.matches('input[type=checkbox], input[type=radio]') ? (control.closest('label') ?? control) : control;
      const box = hit.getBoundingClientRect();
      if (box.width > 0 && (box.height < least || box.width < least)) {
        found.push(`${Math.round(box.width)}×${Math.round(box.height)} ${control.outerHTML.slice(0, 120)}`);
      }
    }
    return found;
  }, TARGET_PX);
  expect(small, small.join('\n')).toEqual([]);
}

/** The page itself never scrolls sideways; wide tables scroll within themselves. */
export async function expectNarrow(page: Page): Promise<void> {
  const { wide, room } = await page.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    room: document.documentElement.clientWidth,
  }));
  expect(wide).toBeLessThanOrEqual(room);
}

const SIZES = [
  { width: 360, height: 740 },
  { width: 1024, height: 768 },
  { width: 3840, height: 2160 },
];

let looks = 0;

/** With LOOKS=FOLDER every screen that is held against this is also left there as a picture, to be looked at. */
async function look(page: Page, width: number): Promise<void> {
  const folder = process.env['LOOKS'];
  if (folder !== undefined) {
    const name = new URL(page.url()).pathname.replace(/[^a-z0-9]+/gi, '-').replace(/^-|-$/g, '') || 'banks';
    await page.screenshot({ path: `${folder}/${name}-${width}-${looks++}.png`, fullPage: width < 1000 });
  }
}

/** All of it, at phone, tablet and wall size, on light and dark ground. */
export async function expectGood(page: Page): Promise<void> {
  const size = page.viewportSize();
  for (const [i, each] of SIZES.entries()) {
    await page.setViewportSize(each);
    await page.emulateMedia({ colorScheme: i % 2 === 0 ? 'light' : 'dark' });
    await look(page, each.width);
    await expectNarrow(page);
    await expectTouchable(page);
    await expectAccessible(page);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  if (size !== null) {
    await page.setViewportSize(size);
  }
}
