/** Versions of the app on this device: each whole in a cache of its own, and marks that say which one is in use. Page and worker share this. */
const MARKS = 'varwright-versions';
const PREFIX = 'varwright-app-';

/** The version that every page runs, and the newest one that is whole on this device. */
export type Mark = 'in-use' | 'ready';

/** What page and worker tell each other: a version has become whole; another one is in use from now on. */
export type Told = 'ready' | 'changed';

export const CHANNEL = 'varwright-versions';

export async function marked(mark: Mark): Promise<string | undefined> {
  return (await caches.match(`/versions/${mark}`, { cacheName: MARKS }))?.text();
}

export async function setMark(mark: Mark, version: string): Promise<void> {
  await (await caches.open(MARKS)).put(`/versions/${mark}`, new Response(version));
}

export function cacheOf(version: string): string {
  return PREFIX + version;
}

/** Held, shared, by every page that runs a version and by the worker that fetches it: nobody removes it meanwhile. */
export function lockOf(version: string): string {
  return `varwright-version-${version}`;
}

/** One file of a version; undefined where it is not kept. */
export async function keptFile(version: string, path: string): Promise<Response | undefined> {
  return caches.match(path, { cacheName: cacheOf(version), ignoreVary: true });
}

/** Removes versions that are neither in use nor ready, and that no page runs. */
export async function removeUnused(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX)) {
      const version = name.slice(PREFIX.length);
      await navigator.locks.request(lockOf(version), { ifAvailable: true }, async (lock) => {
        if (lock !== null && version !== (await marked('in-use')) && version !== (await marked('ready'))) {
          await caches.delete(name);
        }
      });
    }
  }
}
