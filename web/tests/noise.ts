// A photo that no camera makes smaller: every point at random.
import type { Page } from '@playwright/test';

export async function noise(page: Page, side: number): Promise<Buffer> {
  const address = await page.evaluate((points) => {
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = points;
    const pen = canvas.getContext('2d') as CanvasRenderingContext2D;
    const picture = pen.createImageData(points, points);
    picture.data.forEach((_, i) => (picture.data[i] = i % 4 === 3 ? 255 : Math.random() * 255));
    pen.putImageData(picture, 0, 0);
    return canvas.toDataURL('image/jpeg', 0.9);
  }, side);
  return Buffer.from(address.split(',')[1] ?? '', 'base64');
}
