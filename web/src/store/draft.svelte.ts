/** What a person has half filled in: kept on the device, so that a reload or an empty battery loses none of it. */
import { database, keep, setting } from './database';

export class Draft<T> {
  value = $state.raw() as T;
  readonly #name: string;
  #touched = false;

  constructor(name: string, empty: T) {
    this.#name = `draft:${name}`;
    this.value = empty;
    void setting<T>(this.#name).then((kept) => {
      if (kept !== undefined && !this.#touched) {
        this.value = kept;
      }
    });
  }

  set(value: T): void {
    this.#touched = true;
    this.value = value;
    // A draft that can't be kept is still on the screen; the confirmed event itself says so where the disk is full.
    keep(this.#name, value).catch(() => undefined);
  }

  async drop(): Promise<void> {
    await database.settings.delete(this.#name);
  }
}
