/** A new version of the app is used only when a person asks for it, and never while a job is under way. */
import { registerSW } from 'virtual:pwa-register';
import { database } from './store/database';

class Update {
  ready = $state(false);
  #use: ((reload?: boolean) => Promise<void>) | undefined;

  constructor() {
    if ('serviceWorker' in navigator) {
      this.#use = registerSW({ immediate: true, onNeedRefresh: () => (this.ready = true) });
    }
  }

  /** Whether work is under way on this device: an order of work begun and not at its end, or people on a bank. */
  async jobUnderWay(): Promise<boolean> {
    const cards = await database.cards.toArray();
    return cards.some((c) => !c.closed && (c.peopleOn > 0 || c.phase === 'way-in' || c.phase === 'work' || c.phase === 'way-back'));
  }

  async use(): Promise<void> {
    await this.#use?.(true);
  }
}

export const update = new Update();
