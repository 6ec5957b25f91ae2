// Whether a drawing can be read: the contrast of what is drawn against its ground, as WCAG 2.2 reckons it (relative luminance, 1.4.3 and 1.4.11).
import { expect, type Page } from '@playwright/test';

const LINE = 3;
const TEXT = 4.5;

/** Every line at 3 to 1 and every word at 4.5 to 1; a core in the colour of the ground is no line. Returns the luminance of the ground. */
export async function expectReadableDrawing(page: Page): Promise<number> {
  const seen = await page
    .locator('.drawing')
    .first()
    .evaluate((drawing) => {
      const luminance = (colour: string) => {
        const [r = 0, g = 0, b = 0] = (colour.match(/\d+(\.\d+)?/g) ?? [])
          .map(Number)
          .slice(0, 3)
          .map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const sheet = drawing.querySelector('svg > rect');
      const ground = luminance(sheet === null ? '' : getComputedStyle(sheet).fill);
      const ratio = (of: number) => (Math.max(of, ground) + 0.05) / (Math.min(of, ground) + 0.05);
      const lines: Record<string, number> = {};
      const words: Record<string, number> = {};
      for (const shape of drawing.querySelectorAll('path, rect, circle, text')) {
        const { fill, stroke } = getComputedStyle(shape);
        if (shape.tagName === 'text') {
          words[fill] = ratio(luminance(fill));
          continue;
        }
        for (const colour of [fill, stroke]) {
          if (colour !== 'none' && luminance(colour) !== ground) {
            lines[colour] = ratio(luminance(colour));
          }
        }
      }
      return { ground, lines, words };
    });
  expect(Object.keys(seen.words).length).toBeGreaterThan(0);
  expect(Object.keys(seen.lines).length).toBeGreaterThan(2);
  expect(Math.min(...Object.values(seen.lines)), JSON.stringify(seen)).toBeGreaterThanOrEqual(LINE);
  expect(Math.min(...Object.values(seen.words)), JSON.stringify(seen)).toBeGreaterThanOrEqual(TEXT);
  return seen.ground;
}
