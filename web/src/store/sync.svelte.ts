/** The exchange with the server: lines, files and banks go up, what others wrote comes down. The app never waits for it. */
import { reason } from '../core/told';
import { database, keep, setting, sha256, type StoredBank } from './database';
import { onChange, take } from './log';

export type Standing = 'syncing' | 'here' | 'away' | 'refused' | 'failing';

const EVERY_MS = 15_000;
const LINES_A_PIECE = 500;

interface ServerBank {
  readonly id: string;
  readonly sha256: string;
}

class Sync {
  standing = $state<Standing>('syncing');
  why = $state('');
  waiting = $state(0);
  #running = false;
  #again = false;

  start(): void {
    void this.now();
    setInterval(() => void this.now(), EVERY_MS);
    addEventListener('online', () => void this.now());
    onChange(() => void this.now());
  }

  /** Exchanges everything once. One tab does it at a time; others wait for the next turn. */
  async now(): Promise<void> {
    if (this.#running) {
      this.#again = true;
      return;
    }
    this.#running = true;
    try {
      await navigator.locks.request('varwright-sync', { ifAvailable: true }, async (lock) => {
        if (lock !== null) {
          await this.#exchange();
        }
      });
    } finally {
      this.#running = false;
      if (this.#again) {
        this.#again = false;
        setTimeout(() => void this.now(), 200);
      }
    }
  }

  async #exchange(): Promise<void> {
    try {
      await count(this);
      const refusals = [...(await sendLines()), ...(await sendAttachments()), ...(await exchangeBanks())];
      const lacking = await fetchLines();
      this.#again ||= lacking;
      await count(this);
      this.standing = refusals.length === 0 ? 'here' : 'refused';
      this.why = refusals[0] ?? '';
    } catch (error) {
      if (!(error instanceof TypeError) && !(error instanceof Away)) {
        this.why = reason(error);
      }
      this.standing = error instanceof Failing ? 'failing' : 'away';
    }
  }
}

/** No answer, or none that makes sense. */
class Away extends Error {}

/** The server is there and says itself why it can take nothing: its disk is full, its database is held. */
class Failing extends Error {}

async function count(sync: Sync): Promise<void> {
  sync.waiting = (await database.events.where('sent').equals(0).count()) + (await database.attachments.where('sent').equals(0).count());
}

async function call(path: string, init: RequestInit = {}): Promise<Response> {
  const response = await fetch(path, { ...init, cache: 'no-store', signal: AbortSignal.timeout(20_000) });
  if (response.status >= 500) {
    const told = response.headers.get('content-type')?.startsWith('application/problem+json') === true;
    throw told ? new Failing(await refusal(response)) : new Away(`${path}: ${response.status}`);
  }
  return response;
}

async function refusal(response: Response): Promise<string> {
  try {
    const problem = (await response.json()) as { detail?: string; title?: string };
    return problem.detail ?? problem.title ?? String(response.status);
  } catch {
    return String(response.status);
  }
}

async function sendLines(): Promise<string[]> {
  const refusals: string[] = [];
  const unsent = await database.events.where('sent').equals(0).toArray();
  const jobs = [...new Set(unsent.map((e) => e.job))];
  for (const job of jobs) {
    const events = unsent.filter((e) => e.job === job).sort((a, b) => a.seq - b.seq);
    for (let from = 0; from < events.length; from += LINES_A_PIECE) {
      const piece = events.slice(from, from + LINES_A_PIECE);
      const response = await call(`/api/jobs/${encodeURIComponent(job)}/events`, {
        method: 'POST',
        headers: { 'content-type': 'application/x-ndjson' },
        body: piece.map((e) => `${e.line}\n`).join(''),
      });
      if (!response.ok) {
        refusals.push(await refusal(response));
        break;
      }
      await database.events
        .where('hash')
        .anyOf(piece.map((e) => e.hash))
        .modify({ sent: 1 });
    }
  }
  return refusals;
}

/** Whether the server lacks lines that it once had acknowledged, as after a start on an empty folder or an older copy: they are to be sent again. */
async function fetchLines(): Promise<boolean> {
  const response = await call('/api/jobs');
  if (!response.ok) {
    throw new Away(await refusal(response));
  }
  const listed = (await response.json()) as { jobs: { job: string; hash?: string }[] };
  const seen = (await setting<Record<string, string>>('server-jobs')) ?? {};
  let lacking = false;
  const known = new Set(listed.jobs.map((j) => j.job));
  for (const job of (await database.events.orderBy('job').uniqueKeys()) as string[]) {
    if (!known.has(job)) {
      lacking = (await markLacking(job, [])) || lacking;
    }
  }
  for (const { job: id, hash } of listed.jobs) {
    if (hash !== undefined && seen[id] === hash) {
      continue;
    }
    const lines = await call(`/api/jobs/${encodeURIComponent(id)}/events`);
    if (lines.ok) {
      const theirs = (await lines.text()).split('\n').filter((l) => l !== '');
      await take(id, theirs, 1);
      lacking = (await markLacking(id, theirs)) || lacking;
      if (hash !== undefined) {
        seen[id] = hash;
      }
    }
  }
  await keep('server-jobs', seen);
  return lacking;
}

/** Marks what is here and not among those lines as not sent; whether there was any that had been. */
async function markLacking(job: string, lines: readonly string[]): Promise<boolean> {
  const there = new Set(await Promise.all(lines.map((line) => sha256(line))));
  const lacking = (await database.events.where('job').equals(job).toArray()).filter((e) => e.sent === 1 && !there.has(e.hash));
  if (lacking.length > 0) {
    await database.transaction('rw', database.events, database.attachments, async () => {
      await database.events.bulkPut(lacking.map((e) => ({ ...e, sent: 0 as const })));
      await database.attachments.where('job').equals(job).modify({ sent: 0 });
    });
  }
  return lacking.length > 0;
}

async function sendAttachments(): Promise<string[]> {
  const refusals: string[] = [];
  for (const attachment of await database.attachments.where('sent').equals(0).toArray()) {
    const response = await call(`/api/attachments/${attachment.sha256}`, {
      method: 'PUT',
      headers: { 'content-type': attachment.mediaType },
      body: attachment.bytes,
    });
    if (response.ok) {
      await database.attachments.update(attachment.sha256, { sent: 1 });
    } else {
      refusals.push(await refusal(response));
    }
  }
  return refusals;
}

/** A bank changed here goes up unless somebody else has changed it meanwhile: then both stay and the person is told. */
async function exchangeBanks(): Promise<string[]> {
  const response = await call('/api/banks');
  if (!response.ok) {
    throw new Away(await refusal(response));
  }
  const refusals: string[] = [];
  const theirs = new Map(((await response.json()) as { banks: ServerBank[] }).banks.map((b) => [b.id, b.sha256]));
  for (const bank of await database.banks.toArray()) {
    const there = theirs.get(bank.id);
    if (there === bank.sha256) {
      if (bank.base !== there) {
        await database.banks.update(bank.id, { base: there });
      }
    } else if (there === undefined || (bank.sha256 !== bank.base && there === bank.base)) {
      const put = await call(`/api/banks/${encodeURIComponent(bank.id)}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/yaml', ...(there === undefined ? { 'if-none-match': '*' } : { 'if-match': `"${there}"` }) },
        body: bank.text,
      });
      if (put.ok) {
        await database.banks.update(bank.id, { base: bank.sha256 });
      } else {
        refusals.push(await refusal(put));
      }
    } else if (bank.sha256 !== bank.base) {
      refusals.push(`${bank.name}: changed here and on the server. Export yours, then take the server's and put your change in again.`);
    } else if (there !== undefined) {
      await fetchBank(bank.id);
    }
    theirs.delete(bank.id);
  }
  for (const id of theirs.keys()) {
    await fetchBank(id);
  }
  return refusals;
}

async function fetchBank(id: string): Promise<void> {
  const response = await call(`/api/banks/${encodeURIComponent(id)}`);
  if (!response.ok) {
    return;
  }
  const text = await response.text();
  const hash = await sha256(text);
  const name = nameOf(text) ?? id;
  const formerly = formerNames(await database.banks.get(id), name);
  await database.banks.put({ id, name, text, sha256: hash, base: hash, changedAt: Date.now(), formerly });
}

/** What a bank was called here before it has this name. */
export function formerNames(known: StoredBank | undefined, name: string): readonly string[] {
  return known === undefined ? [] : [...new Set([...(known.formerly ?? []), known.name])].filter((each) => each !== name);
}

/** The name that a bank file gives itself, for lists; the file as a whole is judged by `core`. */
export function nameOf(text: string): string | undefined {
  return topValue(text, 'name');
}

/** The value of a key at the top of a bank file, without the comment that may follow it. */
export function topValue(text: string, key: string): string | undefined {
  const line = new RegExp(`^${key}:[ \\t]*(.+?)[ \\t\\r]*$`, 'm').exec(text)?.[1];
  if (line === undefined) {
    return undefined;
  }
  const quoted = /^(["'])(.*?)\1(?:\s+#.*)?$/.exec(line);
  return quoted?.[2] ?? line.replace(/\s+#.*$/, '');
}

export const sync = new Sync();
