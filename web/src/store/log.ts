/** The logs of jobs on this device: `core` judges an event, it goes to disk, and only then does anybody learn that it stands. */
import { ask, type JobState, type Json, type Problem } from '../core/core';
import { database, sha256, type StoredAttachment, type StoredEvent } from './database';
import { deviceIn } from './device';
import { storeFailure } from './failure';
import { health } from './health.svelte';

export type Added =
  { readonly ok: true; readonly state: JobState; readonly id: string } | { readonly ok: false; readonly problems: readonly Problem[] };

/** What is added: its type and body as in the job log, and who says so. */
export interface Entry {
  readonly type: string;
  readonly body: { readonly [name: string]: Json };
  readonly by: string;
}

/** What this page has seen of the jobs on its screen. A browser short of room may clear its store even under an open page: then it is put back from here. */
const watched = new Map<string, readonly StoredEvent[]>();

/** Keeps the lines of a job in memory, too, while it is on the screen. */
export function watch(job: string): () => void {
  watched.set(job, []);
  return () => watched.delete(job);
}

async function eventsOf(job: string): Promise<StoredEvent[]> {
  const events = await database.events.where('job').equals(job).toArray();
  const seen = watched.get(job);
  if (seen === undefined) {
    return events;
  }
  const there = new Set(events.map((e) => e.hash));
  const lost = seen.filter((e) => !there.has(e.hash)).map((e) => ({ ...e, sent: 0 as const }));
  if (lost.length > 0) {
    try {
      await database.events.bulkPut(lost);
    } catch (error) {
      throw storeFailure(error);
    }
    health.restored += lost.length;
    events.push(...lost);
  }
  watched.set(job, events);
  return events;
}

/** The text of a job's log; lines by device and number, as everybody orders them. */
export async function logText(job: string): Promise<string> {
  const events = await eventsOf(job);
  events.sort((a, b) => (a.device < b.device ? -1 : a.device > b.device ? 1 : a.seq - b.seq || (a.hash < b.hash ? -1 : 1)));
  return events.map((e) => `${e.line}\n`).join('');
}

/** A line of a log, read. */
export interface Line {
  readonly id: string;
  readonly device: string;
  readonly seq: number;
  readonly clock: { readonly wall: number };
  readonly by: string;
  readonly type: string;
  readonly body: JsonBody;
}

type JsonBody = { readonly [name: string]: Json };

/** Every line of a job in the order of the devices' clocks. */
export async function logLines(job: string): Promise<readonly Line[]> {
  const events = await database.events.where('job').equals(job).toArray();
  return events.map((e) => JSON.parse(e.line) as Line).sort((a, b) => a.clock.wall - b.clock.wall || a.seq - b.seq);
}

/** What stands in a job; undefined where this device has nothing of it. */
export async function jobState(job: string): Promise<JobState | undefined> {
  const log = await logText(job);
  if (log === '') {
    return undefined;
  }
  const answer = await ask('job', { log });
  if (!answer.ok) {
    throw new Error(answer.problems.map((p) => p.message).join('\n'));
  }
  return answer.result;
}

/** Held, shared, while an event is added, and alone by whoever changes the version of the app: no job begins in between. */
export const BEGINNING = 'varwright-beginning';

/**
 * Adds an event. Only one tab at a time writes to a job, so that this device's chain stays one chain.
 *
 * @throws StoreFailure where the device can't write it; then nothing was added
 */
export async function add(job: string, entry: Entry): Promise<Added> {
  return navigator.locks.request(BEGINNING, { mode: 'shared' }, () =>
    navigator.locks.request(`varwright-job-${job}`, () => judgeAndKeep(job, entry)),
  );
}

async function judgeAndKeep(job: string, entry: Entry): Promise<Added> {
  const device = await deviceIn(job);
  const answer = await ask('job-propose', { job, log: await logText(job), device, now: Date.now(), ...entry });
  if (!answer.ok) {
    return answer;
  }
  const { line, hash, job: state } = answer.result;
  const event = JSON.parse(line) as { id: string; seq: number };
  const written: StoredEvent = { hash, job, device, seq: event.seq, line, sent: 0 };
  try {
    await database.transaction('rw', database.events, database.cards, async () => {
      await database.events.add(written);
      await database.cards.put(card(state));
    });
  } catch (error) {
    throw storeFailure(error);
  }
  if (watched.has(job)) {
    watched.set(job, [...(watched.get(job) ?? []), written]);
  }
  changes.postMessage({ job, hash: state.hash });
  return { ok: true, state, id: event.id };
}

/** Takes in lines that another device wrote, with the files that they name: all of it or nothing. What is already here stays as it is. */
export async function take(
  job: string,
  lines: readonly string[],
  sent: 0 | 1,
  attachments: readonly StoredAttachment[] = [],
): Promise<number> {
  const events: StoredEvent[] = [];
  for (const line of lines) {
    const event = JSON.parse(line) as { job: string; device: string; seq: number };
    events.push({ hash: await sha256(line), job, device: event.device, seq: event.seq, line, sent });
  }
  let added = 0;
  try {
    await database.transaction('rw', database.events, database.attachments, async () => {
      const kept = new Set(await database.attachments.toCollection().primaryKeys());
      await database.attachments.bulkAdd(attachments.filter((a) => !kept.has(a.sha256)));
      const known = new Set(await database.events.where('job').equals(job).primaryKeys());
      const fresh = events.filter((e) => !known.has(e.hash));
      await database.events.bulkAdd(fresh);
      if (sent === 1) {
        await database.events
          .where('hash')
          .anyOf(events.map((e) => e.hash))
          .modify({ sent: 1 });
      }
      added = fresh.length;
    });
  } catch (error) {
    throw storeFailure(error);
  }
  if (added > 0) {
    const state = await jobState(job);
    if (state !== undefined) {
      await database.cards.put(card(state));
    }
    changes.postMessage({ job, hash: state?.hash ?? '' });
  }
  return added;
}

/** Lists jobs whose lines came in and whose card did not: the device was switched off in between. */
export async function mendCards(): Promise<void> {
  const listed = new Set(await database.cards.toCollection().primaryKeys());
  for (const job of (await database.events.orderBy('job').uniqueKeys()) as string[]) {
    const state = listed.has(job) ? undefined : await jobState(job);
    if (state !== undefined) {
      await database.cards.put(card(state));
    }
  }
}

const changes = new BroadcastChannel('varwright-jobs');

/** Calls with the job and its log's hash when a tab, this one too, or the exchange with the server has added to a job. */
export function onChange(heard: (job: string, hash: string) => void): () => void {
  const channel = new BroadcastChannel('varwright-jobs');
  channel.onmessage = (event: MessageEvent<{ job: string; hash: string }>) => heard(event.data.job, event.data.hash);
  return () => channel.close();
}

function card(state: JobState) {
  return {
    job: state.job,
    title: state.title ?? state.job,
    bank: state.bank ?? '',
    phase: state.order?.phase ?? 'none',
    closed: state.closed !== null,
    peopleOn: state.people.length,
    stopped: state.stopped !== null,
    changedAt: Date.now(),
    openedAt: state.openedAt,
    nextVisits: state.nextVisits.map((v) => ({ date: v.body.date, purpose: v.body.for, by: v.by })),
  };
}
