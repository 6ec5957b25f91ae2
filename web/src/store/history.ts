/** What the jobs on this device tell of each unit of a bank. */
import { isJobOf } from './banks';
import { database, type StoredBank } from './database';
import { jobState } from './log';

export interface UnitEntry {
  readonly at: number;
  readonly position: string;
  readonly serial: string;
  readonly what: string;
  readonly by: string;
  readonly job: string;
  readonly title: string;
}

/** Readings and moves of units in every job of the bank, the latest first. What was taken back or not counted is not in it. */
export async function unitHistory(bank: StoredBank): Promise<readonly UnitEntry[]> {
  const entries: UnitEntry[] = [];
  for (const { job, title } of await database.cards.filter((c) => isJobOf(bank, c.bank)).toArray()) {
    const state = await jobState(job);
    if (state === undefined) {
      continue;
    }
    for (const { at, by, body } of state.readings) {
      const { serial, ...rest } = body.values;
      const what = Object.entries(rest)
        .map(([name, value]) => `${name} ${value}`)
        .join(', ');
      entries.push({ at, by, job, title, position: body.position, serial: serial ?? '', what });
    }
    for (const { at, by, body } of state.unitMoves) {
      entries.push({
        at,
        by,
        job,
        title,
        position: body.to ?? body.from ?? '',
        serial: body.serial,
        what: `${body.from ?? '–'} → ${body.to ?? '–'}`,
      });
    }
  }
  return entries.sort((a, b) => b.at - a.at);
}
