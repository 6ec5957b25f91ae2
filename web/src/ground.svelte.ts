/** Dark or light ground; by the device unless the person has chosen. */
import { keep, setting } from './store/database';

export type Choice = 'device' | 'light' | 'dark';

const device = matchMedia('(prefers-color-scheme: dark)');

class Ground {
  choice = $state<Choice>('device');

  constructor() {
    this.#show();
    device.addEventListener('change', () => this.#show());
  }

  async load(): Promise<void> {
    this.choice = (await setting<Choice>('ground')) ?? 'device';
    this.#show();
  }

  async choose(choice: Choice): Promise<void> {
    this.choice = choice;
    this.#show();
    await keep('ground', choice);
  }

  #show(): void {
    const dark = this.choice === 'dark' || (this.choice === 'device' && device.matches);
    document.documentElement.dataset['ground'] = dark ? 'dark' : 'light';
  }
}

export const ground = new Ground();
