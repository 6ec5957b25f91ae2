/**
 * Gives the app without a server, always in the version that is marked as in use. A newer one is fetched whole and checked file by file, and then lies there: only a page, asked by
 * a person, moves the mark. So it makes no difference that the browser replaces this worker when it likes.
 */
import { CHANNEL, cacheOf, keptFile, lockOf, marked, setMark, type Told } from './kept';

/** A file of the version that this worker came with; its revision is the SHA-256 of its content. */
interface Listed {
  readonly url: string;
  readonly revision: string;
}

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: readonly Listed[] };

const LISTED = self.__WB_MANIFEST;

self.addEventListener('install', (event) => event.waitUntil(keep()));
// The very first page came without this worker, and must not need a server for what it loads later.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => {
  const { origin, pathname } = new URL(event.request.url);
  if (event.request.method !== 'GET' || origin !== location.origin || pathname.startsWith('/api/') || pathname === '/healthz') {
    return;
  }
  event.respondWith(event.request.mode === 'navigate' ? page(event) : file(event.request, pathname));
});

async function page(event: FetchEvent): Promise<Response> {
  const version = await marked('in-use');
  const kept = version === undefined ? undefined : await keptFile(version, '/index.html');
  if (kept === undefined) {
    // Somebody has cleared the caches and left this worker.
    event.waitUntil(keep().catch(() => undefined));
  }
  return kept ?? fetch(event.request);
}

async function file(request: Request, path: string): Promise<Response> {
  if (isNamedByContent(path.slice(1))) {
    // Right in whichever version it lies: a page that was opened with another one finds its own.
    return (await caches.match(path, { ignoreVary: true })) ?? fetch(request);
  }
  const version = await marked('in-use');
  return (version === undefined ? undefined : await keptFile(version, path)) ?? fetch(request);
}

/** Fetches every file of this worker's version. Only when all of them are here, and are what the list says, is the version ready. */
async function keep(): Promise<void> {
  const version = (await sha256(new TextEncoder().encode(JSON.stringify(LISTED)))).slice(0, 12);
  await navigator.locks.request(lockOf(version), { mode: 'shared' }, async () => {
    const cache = await caches.open(cacheOf(version));
    await Promise.all(LISTED.map((listed) => take(cache, listed)));
    await setMark('ready', version);
    const used = await marked('in-use');
    if (used === undefined || (await keptFile(used, '/index.html')) === undefined) {
      await setMark('in-use', version);
    }
  });
  const channel = new BroadcastChannel(CHANNEL);
  channel.postMessage('ready' satisfies Told);
  channel.close();
}

async function take(cache: Cache, { url, revision }: Listed): Promise<void> {
  const path = `/${url}`;
  if (isNamedByContent(url)) {
    // Most of a new version is the old one, and a download that broke off has left something, too.
    for (const name of await caches.keys()) {
      const known = await caches.match(path, { cacheName: name, ignoreVary: true });
      if (known !== undefined && (await sha256(await known.clone().arrayBuffer())) === revision) {
        await cache.put(path, known);
        return;
      }
    }
  }
  const response = await fetch(path, { cache: 'no-cache' });
  if (!response.ok || (await sha256(await response.clone().arrayBuffer())) !== revision) {
    throw new Error(`${path} is not of this version (${response.status})`);
  }
  await cache.put(path, response);
}

function isNamedByContent(url: string): boolean {
  return url.startsWith('assets/') || url.startsWith('core-');
}

async function sha256(content: BufferSource): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', content));
  return Array.from(digest, (b) => b.toString(16).padStart(2, '0')).join('');
}
