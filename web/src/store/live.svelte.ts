/** A query of this device's store that shows what stands, also when another tab changes it. */
import { liveQuery } from 'dexie';

export class Live<T> {
  value = $state.raw<T | undefined>(undefined);
  #end: () => void;

  constructor(query: () => Promise<T>) {
    const subscription = liveQuery(query).subscribe({
      next: (value) => (this.value = value),
      error: (error: unknown) => console.error(error),
    });
    this.#end = () => subscription.unsubscribe();
  }

  close(): void {
    this.#end();
  }
}
