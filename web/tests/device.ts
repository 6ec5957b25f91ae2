// What a device holds, read past the app.
import type { Page } from '@playwright/test';
import type { Product } from './product';

/** The job that a page shows. */
export function jobOf(page: Page): string {
  return /\/jobs\/([^/]+)/.exec(page.url())?.[1] ?? '';
}

/** The lines of a job on this device. */
export async function deviceLines(page: Page, job: string): Promise<string[]> {
  return page.evaluate(async (name) => {
    const opened = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('varwright');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const events = await new Promise<{ job: string; line: string }[]>((resolve, reject) => {
      const request = opened.transaction('events').objectStore('events').getAll();
      request.onsuccess = () => resolve(request.result as { job: string; line: string }[]);
      request.onerror = () => reject(request.error);
    });
    opened.close();
    return events.filter((e) => e.job === name).map((e) => e.line);
  }, job);
}

/** The lines that the server has. */
export async function serverLines(product: Product, job: string): Promise<string[]> {
  const response = await fetch(`${product.address}api/jobs/${job}/events`);
  return response.ok ? (await response.text()).split('\n').filter((l) => l !== '') : [];
}
