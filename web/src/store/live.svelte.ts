/** A query of this device's store that shows what stands, also when another tab changes it. */
import { liveQuery } from 'dexie';
import { reason } from '../core/told';
import { health } from './health.svelte';

export class Live<T> {
  value = $state.raw<T | undefined>(undefined);
  #end: () => void;

  constructor(query: () => Promise<T>) {
    const subscription = liveQuery(query).subscribe({
      next: (value) => (this.value = value),
      error: (error: unknown) => (health.failure = reason(error)),
    });
    this.#end = () => subscription.unsubscribe();
  }

  close(): void {
    this.#end();
  }
}
