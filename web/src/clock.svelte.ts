/** The wall clock of this device, second by second, and whether it can be believed. */
import { keep, setting } from './store/database';

/** A clock that runs this much apart from the time that has passed was set, or the device slept. */
const APART_MS = 5_000;
const SEEN_EVERY_MS = 5_000;
/** So long an app that was killed may take until somebody has started it again. */
const RESTART_MS = 30_000;

/** The clock was at one moment and then at another, with less time in between than it says. */
export interface Jump {
  readonly from: number;
  readonly to: number;
}

class Clock {
  now = $state(Date.now());
  /** A jump that nobody has looked at yet. A device that slept looks the same as one whose clock was set forward: only a person with a watch can tell. */
  jump = $state.raw<Jump | undefined>(undefined);
  /** The app did not run for a while: whether the clock was set meanwhile, nobody has seen. It matters to waits that ran. */
  away = $state.raw<Jump | undefined>(undefined);
  #last = { wall: Date.now(), steady: performance.now() };
  #seen = 0;

  /** Compares with what was last seen before this start. Time backward is a clock that was set; time forward is a device that was off, or one, too. */
  async load(): Promise<void> {
    const seen = await setting<number>('clock-seen');
    if (seen !== undefined && Date.now() < seen - APART_MS) {
      this.jump = { from: seen, to: Date.now() };
    } else if (seen !== undefined && Date.now() > seen + RESTART_MS) {
      this.away = { from: seen, to: Date.now() };
    }
    setInterval(() => this.#tick(), 250);
  }

  /** What a person with a watch must look at before a wait counts that began then. */
  doubt(since: number): Jump | undefined {
    return this.jump ?? (this.away !== undefined && since < this.away.to ? this.away : undefined);
  }

  settled(): void {
    this.jump = undefined;
    this.away = undefined;
  }

  #tick(): void {
    const wall = Date.now();
    const steady = performance.now();
    const apart = wall - this.#last.wall - (steady - this.#last.steady);
    if (Math.abs(apart) > APART_MS) {
      this.jump = { from: this.jump?.from ?? this.#last.wall, to: wall };
    }
    this.#last = { wall, steady };
    this.now = wall;
    if (Math.abs(wall - this.#seen) >= SEEN_EVERY_MS) {
      this.#seen = wall;
      keep('clock-seen', wall).catch(() => undefined);
    }
  }
}

export const clock = new Clock();
