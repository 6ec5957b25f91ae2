/** Who has this device in hand. */
import { keep, setting } from './store/database';

class Person {
  name = $state('');
  known = $state(false);

  async load(): Promise<void> {
    this.name = (await setting<string>('person')) ?? '';
    this.known = true;
  }

  async is(name: string): Promise<void> {
    this.name = name.trim();
    await keep('person', this.name);
  }
}

export const person = new Person();
