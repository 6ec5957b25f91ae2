/** Everything that was read in a job as one table for the survey. */
import { result, type JobState } from '../../../core/core';
import { moment, t } from '../../../words/words.svelte';

export type Values = Readonly<Record<string, string>>;

export interface Reading {
  readonly position: string;
  readonly values: Values;
  /** Where it comes from, in words. */
  readonly source: string;
}

/** Readings typed one by one as a table, one row each. */
export function csv(readings: readonly Reading[]): string {
  const columns = [...new Set(readings.flatMap((r) => Object.keys(r.values)))];
  const rows = readings.map((r) => [r.position, ...columns.map((c) => r.values[c] ?? '')]);
  return [['position', ...columns], ...rows].map((row) => `${row.map(cell).join(',')}\n`).join('');
}

function cell(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

const UNITS: Readonly<Record<string, string>> = {
  capacitance: 'µF',
  inductance: 'µH',
  resistance: 'Ω',
  insulation: 'Ω',
  fuse: 'Ω',
  'contact resistance': 'Ω',
  current: 'A',
};

/** What the survey has understood of an imported table, as readings. */
async function understood(bank: string, file: string, text: string): Promise<readonly Reading[]> {
  const survey = await result('survey', { bank, readings: text, meterLimit: 0.01 });
  const rows = new Map<string, Record<string, string>>();
  for (const value of survey.readings) {
    const key = `${value.row} ${value.at}`;
    const row = rows.get(key) ?? { position: value.at, source: t('readings.rowOf', { row: value.row, file }) };
    const unit = UNITS[value.what] ?? '';
    const si = value.value === null ? undefined : unit.startsWith('µ') ? value.value * 1e6 : value.value;
    row[value.what] = si === undefined ? value.raw : `${Number(si.toPrecision(12))} ${unit}`.trim();
    if (value.terminals !== null) {
      row['terminals'] = value.terminals;
    }
    const serial = survey.units.find((u) => u.rows.includes(value.row))?.serial;
    if (serial !== undefined && serial !== null) {
      row['serial'] = serial;
    }
    rows.set(key, row);
  }
  return [...rows.values()].map(({ position = '', source = '', ...values }) => ({ position, source, values }));
}

const known = new Map<string, Promise<readonly Reading[]>>();

async function imported(state: JobState, table: JobState['readingTables'][number]): Promise<readonly Reading[]> {
  const key = `${table.id}\n${state.bankText}`;
  const reading = known.get(key) ?? understood(state.bankText, table.body.file, table.body.text);
  reading.catch(() => known.delete(key));
  known.set(key, reading);
  return reading;
}

/**
 * Every reading that stands, imported ones first.
 *
 * @param of the bank as it was found, before the first unit was lifted, or as it stands now: then a unit that came in is known by what was read on it since
 */
export async function allReadings(state: JobState, of: 'found' | 'now'): Promise<readonly Reading[]> {
  const firstLift = Math.min(...state.unitMoves.map((m) => m.at));
  const lifts = new Map<string, { readonly at: number; readonly serial: string | undefined }>();
  for (const move of state.unitMoves) {
    const { from, to, serial } = move.body;
    if ((from ?? '') !== '' && lifts.get(from)?.serial === undefined) {
      lifts.set(from, { at: move.at, serial: undefined });
    }
    if ((to ?? '') !== '') {
      lifts.set(to, { at: move.at, serial });
    }
  }
  const holds = (position: string, at: number) => (of === 'found' ? at < firstLift : at > (lifts.get(position)?.at ?? -Infinity));
  const tables = await Promise.all(
    state.readingTables.map(async (table) => (await imported(state, table)).filter((reading) => holds(reading.position, table.at))),
  );
  const typed = state.readings
    .filter((r) => holds(r.body.position, r.at))
    .map((r) => {
      const serial = of === 'now' ? lifts.get(r.body.position)?.serial : undefined;
      const values = serial === undefined ? r.body.values : { serial, ...r.body.values };
      return { position: r.body.position, values, source: t('readings.typedAt', { when: moment(r.at) }) };
    });
  return [...tables.flat(), ...typed];
}

/** A sentence about rows of the table made of these readings, with the rows as a person knows them. The first row has the names of the columns. */
export function namingRows(sentence: string, readings: readonly Reading[]): string {
  return sentence.replace(/\brow (\d+)\b/g, (whole, row: string) => readings[Number(row) - 2]?.source ?? whole);
}
