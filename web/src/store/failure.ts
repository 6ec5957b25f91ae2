import { reason } from '../core/told';

/** A failure of this device's own store, in words that say what to do. */
export class StoreFailure extends Error {}

/** Turns what the browser says of its store into what a person can act on. */
export function storeFailure(error: unknown): StoreFailure {
  const name = error instanceof Error ? error.name : '';
  const inner = (error as { inner?: { name?: string } }).inner?.name ?? '';
  if (name === 'QuotaExceededError' || inner === 'QuotaExceededError' || name === 'AbortError') {
    return new StoreFailure(
      'This device has no room left. Nothing was written, and what was confirmed before is safe. Delete photos or files on the device, then confirm again.',
    );
  }
  return new StoreFailure(
    `This device could not write it down (${reason(error)}). Nothing was confirmed. Close other tabs of Varwright and try again; write it on paper meanwhile.`,
  );
}
