/** Expected currents and sensor values of the energized bank, and what was measured held against them. */
import { limitsOf } from '../readings/fields';
import { allReadings, csv } from '../readings/table';
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

/** The readings of the units that stand there now, for the task; nothing where none was read. */
export async function asRead(job: JobState): Promise<{ readings?: string } & Partial<ReturnType<typeof limitsOf>>> {
  const readings = await allReadings(job, 'now');
  if (readings.length === 0) {
    return {};
  }
  return { readings: csv(readings), ...limitsOf(job) };
}

export class Expected {
  energize = $state.raw<Energize | undefined>(undefined);
  problems = $state.raw<readonly Problem[]>([]);
  failure = $state.raw('');
  #of = '';

  /** @param job whose units count as they were read, where they were; the others as the bank file has them */
  async make(job: JobState, busVolts: number | undefined, measured: readonly string[]): Promise<void> {
    const of = JSON.stringify([job.hash, busVolts, measured]);
    if (of === this.#of) {
      return;
    }
    this.#of = of;
    if (busVolts === undefined) {
      this.energize = undefined;
      return;
    }
    try {
      const energize = await result('energize', { bank: job.bankText, busVolts, measured, ...(await asRead(job)) });
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
