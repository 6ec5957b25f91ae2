/** Dark or light ground; by the device unless the person has chosen. */
import { keep, setting } from './store/database';

export type Choice = 'device' | 'light' | 'dark';

class Ground {
  choice = $state<Choice>('device');

  async load(): Promise<void> {
    this.#use((await setting<Choice>('ground')) ?? 'device');
  }

  async choose(choice: Choice): Promise<void> {
    this.#use(choice);
    await keep('ground', choice);
  }

  #use(choice: Choice): void {
    this.choice = choice;
    if (choice === 'device') {
      delete document.documentElement.dataset['ground'];
    } else {
      document.documentElement.dataset['ground'] = choice;
    }
  }
}

export const ground = new Ground();
