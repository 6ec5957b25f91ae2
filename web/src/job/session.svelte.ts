/** One job on the screen: what stands, and the one way to add to it. */
import { reason } from '../core/told';
import type { JobState, Json, Problem } from '../core/core';
import { add, jobState, onChange, watch } from '../store/log';
import { person } from '../person.svelte';

export type JobBody = { readonly [name: string]: Json };

export class JobSession {
  state = $state.raw<JobState | undefined>(undefined);
  /** Why the last thing that was tried does not stand; empty when it does. */
  problems = $state.raw<readonly Problem[]>([]);
  /** The store's or the computing part's own failure. */
  failure = $state.raw('');
  loading = $state(true);
  busy = $state(false);
  /** What another tab's log came to while this one was adding. */
  #heard: string | undefined;
  readonly #forget: () => void;
  readonly #unwatch: () => void;

  constructor(readonly job: string) {
    this.#unwatch = watch(job);
    this.#forget = onChange((changed, hash) => {
      if (changed !== job) {
        return;
      }
      if (this.busy) {
        this.#heard = hash;
      } else {
        this.#follow(hash);
      }
    });
    void this.load();
  }

  async load(): Promise<void> {
    try {
      this.state = await jobState(this.job);
    } catch (error) {
      this.failure = reason(error);
    } finally {
      this.loading = false;
    }
  }

  /** Adds an event in the name of the person on this device; false where it does not stand, with the reasons in {@link problems} or {@link failure}. */
  async add(type: string, body: JobBody): Promise<boolean> {
    if (this.busy) {
      return false;
    }
    this.busy = true;
    this.problems = [];
    this.failure = '';
    try {
      const added = await add(this.job, { type, body, by: person.name });
      if (added.ok) {
        this.state = added.state;
        return true;
      }
      this.problems = added.problems;
      return false;
    } catch (error) {
      this.failure = reason(error);
      return false;
    } finally {
      this.busy = false;
      // What was refused here may be so because of what was added there.
      if (this.#heard !== undefined) {
        this.#follow(this.#heard);
        this.#heard = undefined;
      }
    }
  }

  /** What this session added itself is on the screen already. */
  #follow(hash: string): void {
    if (this.state?.hash !== hash) {
      void this.load();
    }
  }

  /** Takes the notices off the screen. */
  clear(): void {
    this.problems = [];
    this.failure = '';
  }

  close(): void {
    this.#forget();
    this.#unwatch();
  }
}
