/** A new version of the app is used only when a person asks for it, and never during an open job. */
import { openJobs } from './store/jobs';
import { BEGINNING } from './store/log';
import { CHANNEL, keptFile, lockOf, marked, removeUnused, setMark, type Told } from './version/kept';

const LOOK_EVERY_MS = 3_600_000;

class Update {
  /** Whether a version other than the one in use is whole on this device. */
  ready = $state(false);
  inUse = $state('');
  readonly #channel = new BroadcastChannel(CHANNEL);
  #looked = Date.now();

  constructor() {
    // While the app is being written its files come one by one, and no worker keeps them.
    if (import.meta.env.PROD && 'serviceWorker' in navigator) {
      this.#start().catch((error: unknown) => console.error(error));
    }
  }

  async #start(): Promise<void> {
    this.#channel.onmessage = (event: MessageEvent<Told>) => {
      if (event.data === 'changed') {
        location.reload();
      } else {
        void this.#read();
      }
    };
    const registration = await navigator.serviceWorker.register('/sw.js');
    await navigator.serviceWorker.ready;
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible' && Date.now() - this.#looked > LOOK_EVERY_MS) {
        this.#looked = Date.now();
        registration.update().catch(() => undefined);
      }
    });
    await this.#hold();
    await this.#read();
    await removeUnused();
  }

  /** As long as this page lives, the files of its version stay. */
  async #hold(): Promise<void> {
    const version = await marked('in-use');
    if (version !== undefined) {
      await new Promise<void>((held) => {
        void navigator.locks.request(lockOf(version), { mode: 'shared' }, () => {
          held();
          return new Promise(() => undefined);
        });
      });
      if ((await marked('in-use')) !== version) {
        location.reload();
      }
    }
  }

  async #read(): Promise<void> {
    const [inUse, ready] = await Promise.all([marked('in-use'), marked('ready')]);
    this.inUse = inUse ?? '';
    this.ready = inUse !== undefined && ready !== undefined && ready !== inUse;
  }

  /** Uses the version that is ready, in every tab, unless a job was begun meanwhile. */
  async use(): Promise<void> {
    await navigator.locks.request(BEGINNING, async () => {
      const version = await marked('ready');
      if (version !== undefined && (await openJobs()).length === 0 && (await keptFile(version, '/index.html')) !== undefined) {
        await setMark('in-use', version);
        this.#channel.postMessage('changed' satisfies Told);
        location.reload();
      }
    });
  }
}

export const update = new Update();
