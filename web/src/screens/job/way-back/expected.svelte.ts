/** Expected currents and sensor values of the energized bank, and what was measured held against them. */
import { told } from '../../../core/told';
import { result, type Energize, type JobState, type Problem } from '../../../core/core';

/** The place of the bus voltage in the log. */
export const BUS = 'bus';

/** The latest value of every place. */
export function latest(state: JobState): ReadonlyMap<string, JobState['measured'][number]> {
  return new Map(state.measured.map((m) => [m.body.place, m]));
}

/** Volts of a text such as `12.4 kV`; undefined where it is none. */
export function volts(text: string): number | undefined {
  const parts = /^\s*(\d+(?:\.\d+)?)\s*(k|M)?V\s*$/.exec(text.replace(',', '.'));
  const value = parts === null ? Number.NaN : Number(parts[1]) * (parts[2] === 'k' ? 1e3 : parts[2] === 'M' ? 1e6 : 1);
  return value > 0 ? value : undefined;
}

export class Expected {
  energize = $state.raw<Energize | undefined>(undefined);
  problems = $state.raw<readonly Problem[]>([]);
  failure = $state.raw('');
  #of = '';

  async make(bank: string, busVolts: number | undefined, measured: readonly string[]): Promise<void> {
    const of = JSON.stringify([bank.length, busVolts, measured]);
    if (of === this.#of) {
      return;
    }
    this.#of = of;
    if (busVolts === undefined) {
      this.energize = undefined;
      return;
    }
    try {
      const energize = await result('energize', { bank, busVolts, measured });
      if (of === this.#of) {
        this.energize = energize;
        this.problems = [];
        this.failure = '';
      }
    } catch (error) {
      if (of === this.#of) {
        ({ problems: this.problems, failure: this.failure } = told(error));
      }
    }
  }
}
