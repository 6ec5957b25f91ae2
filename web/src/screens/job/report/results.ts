/** What follows from the facts of a job, worked out once a state for all parts of the report. */
import { bankOf } from '../../../core/bank';
import { Refused, result, type Bank, type Energize, type Fit, type JobState, type SpareList, type Survey } from '../../../core/core';
import { logLines, logText, type Line } from '../../../store/log';
import { sparesTable } from '../fit/plan.svelte';
import { limitsOf } from '../readings/fields';
import { allReadings, csv, namingRows, type Reading } from '../readings/table';
import { asRead, BUS, latest, volts } from '../way-back/expected.svelte';

export interface Results {
  readonly bank: Bank;
  readonly lines: readonly Line[];
  readonly drawing: { readonly svg: string; readonly state: string } | undefined;
  /** As found, before the first unit was lifted; undefined where nothing was measured. */
  readonly survey: Survey | undefined;
  /** As it stands now, where units were lifted and measured since. */
  readonly after: Survey | undefined;
  readonly spares: SpareList | undefined;
  readonly fit: Fit | undefined;
  readonly energize: Energize | undefined;
  /** What could not be worked out, and why. */
  readonly failures: readonly string[];
}

export async function results(state: JobState): Promise<Results> {
  const failures: string[] = [];
  const bankText = state.bankText;
  async function attempt<T>(work: () => Promise<T>): Promise<T | undefined> {
    try {
      return await work();
    } catch (error) {
      failures.push(error instanceof Refused ? error.problems.map((p) => p.message).join(' ') : String(error));
      return undefined;
    }
  }
  async function surveyed(readings: readonly Reading[]): Promise<Survey | undefined> {
    return readings.length === 0
      ? undefined
      : attempt(async () => naming(await result('survey', { bank: bankText, readings: csv(readings), ...limitsOf(state) }), readings));
  }
  const found = (await attempt(() => allReadings(state, 'found'))) ?? [];
  const now = state.unitMoves.length === 0 ? [] : ((await attempt(() => allReadings(state, 'now'))) ?? []);
  const spares = await attempt(() => result('spares', { bank: bankText, tables: state.spareTables.map((s) => s.body.text) }));
  const readings = csv(found);
  const bus = volts(latest(state).get(BUS)?.body.value ?? '');
  const measured = [...latest(state).values()].filter((m) => m.body.place !== BUS).map((m) => `${m.body.place}=${m.body.value}`);
  const log = await logText(state.job);
  return {
    bank: await bankOf(bankText),
    lines: await logLines(state.job),
    drawing: await attempt(() => result('job-draw', { log, page: 'landscape' })),
    survey: await surveyed(found),
    after: await surveyed(now),
    spares,
    fit:
      found.length === 0 || spares === undefined || spares.spares.length === 0
        ? undefined
        : await attempt(() => result('fit', { bank: bankText, readings, spares: sparesTable(spares), ...limitsOf(state) })),
    energize:
      bus === undefined
        ? undefined
        : await attempt(async () => result('energize', { bank: bankText, busVolts: bus, measured, ...(await asRead(state)) })),
    failures,
  };
}

function naming(survey: Survey, readings: readonly Reading[]): Survey {
  return {
    ...survey,
    units: survey.units.map((u) => ({
      ...u,
      reason: namingRows(u.reason, readings),
      remarks: u.remarks.map((r) => namingRows(r, readings)),
    })),
  };
}
