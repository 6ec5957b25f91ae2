/** New jobs, and the ones that are open. */
import { Refused } from '../core/core';
import { person } from '../person.svelte';
import { idOf } from './banks';
import { database, type JobCard } from './database';
import { linesOf, ownNames } from './device';
import { add } from './log';
import { nameOf } from './sync.svelte';

export interface Opening {
  readonly title: string;
  readonly number?: string;
  readonly reason?: string;
  readonly alarm?: string;
}

/** A job's name: bank, day, and three letters so that two devices apart make two jobs. */
function jobName(bankText: string): string {
  const day = new Date().toISOString().slice(0, 10);
  const letters = Array.from(crypto.getRandomValues(new Uint8Array(3)), (b) => 'abcdefghkmnpqrstuvwxyz'[b % 22]).join('');
  return `${idOf(nameOf(bankText) ?? 'bank').slice(0, 40)}-${day}-${letters}`;
}

/**
 * Opens a job on a bank with the file as it is now.
 *
 * @returns its name
 * @throws Refused where the rules refuse it; StoreFailure where the device can't keep it
 */
export async function startJob(bankText: string, opening: Opening): Promise<string> {
  const job = jobName(bankText);
  const added = await add(job, { type: 'opened', body: { bank: bankText, ...opening }, by: person.name });
  if (!added.ok) {
    throw new Refused(added.problems);
  }
  return job;
}

/**
 * Jobs during which the app stays as it is: open ones in which this device has written, and whoever works on them, every one with people on the bank or an order of work begun.
 */
export async function openJobs(): Promise<readonly JobCard[]> {
  const names = await ownNames();
  const open: JobCard[] = [];
  for (const card of await database.cards.filter((c) => !c.closed).toArray()) {
    const written = await Promise.all(names.map((name) => linesOf(card.job, name)));
    const atWork = card.peopleOn > 0 || card.phase === 'way-in' || card.phase === 'work' || card.phase === 'way-back';
    if (atWork || written.some((lines) => lines > 0)) {
      open.push(card);
    }
  }
  return open;
}
