/** Whether this page may run: one that the browser fetched past the worker, as a forced reload does, may be of a version that nobody asked for. */
import { marked } from './kept';

const TRIED = 'varwright-past-worker';

/** Called before anything touches this device's store. False: the page is being loaded anew, through the worker. */
export async function mayStart(): Promise<boolean> {
  if (!('serviceWorker' in navigator) || navigator.serviceWorker.controller !== null) {
    sessionStorage.removeItem(TRIED);
    return true;
  }
  const kept = (await navigator.serviceWorker.getRegistration())?.active && (await marked('in-use')) !== undefined;
  // Once only: a browser that goes past the worker every time shows what it got.
  if (!kept || sessionStorage.getItem(TRIED) !== null) {
    return true;
  }
  sessionStorage.setItem(TRIED, '1');
  location.reload();
  return false;
}
