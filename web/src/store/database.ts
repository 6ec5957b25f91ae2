/** What this device keeps. Everything is here first; the server is only told later. */
import Dexie, { type EntityTable, type Table } from 'dexie';

/** A bank file. */
export interface StoredBank {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  /** SHA-256 of the text. */
  readonly sha256: string;
  /** Hash of the version on the server that this one grew from; empty where the server has none. */
  readonly base: string;
  readonly changedAt: number;
  /** Names that it had on this device before; jobs that were opened under them are its own. */
  readonly formerly?: readonly string[];
}

/** One line of a job's log, as it was written. */
export interface StoredEvent {
  /** SHA-256 of the line. */
  readonly hash: string;
  readonly job: string;
  readonly device: string;
  readonly seq: number;
  readonly line: string;
  /** 1 when the server has said that it has it on disk. */
  sent: 0 | 1;
}

/** A photo or another file of a job. */
export interface StoredAttachment {
  readonly sha256: string;
  readonly job: string;
  readonly mediaType: string;
  readonly bytes: Blob;
  sent: 0 | 1;
}

/** What the list of jobs shows without computing anything. */
export interface JobCard {
  readonly job: string;
  readonly title: string;
  readonly bank: string;
  readonly phase: string;
  readonly closed: boolean;
  readonly peopleOn: number;
  readonly stopped: boolean;
  readonly changedAt: number;
  /** When the job was opened [ms]; missing in a card that an earlier version wrote. */
  readonly openedAt?: number | null;
  /** The next visit that the job names; several where devices disagree; missing in a card that an earlier version wrote. */
  readonly nextVisits?: readonly AgreedVisit[];
}

/** A day on which somebody comes again. */
export interface AgreedVisit {
  /** Year, month and day, such as 2027-05-12. */
  readonly date: string;
  readonly purpose: string;
  readonly by: string;
}

interface Setting {
  readonly name: string;
  readonly value: unknown;
}

class Database extends Dexie {
  declare banks: EntityTable<StoredBank, 'id'>;
  declare events: EntityTable<StoredEvent, 'hash'>;
  declare attachments: Table<StoredAttachment, string>;
  declare cards: EntityTable<JobCard, 'job'>;
  declare settings: EntityTable<Setting, 'name'>;

  constructor() {
    // Strict: a transaction is complete when its data have reached the disk, not when the system has taken them.
    super('varwright', { chromeTransactionDurability: 'strict' });
    this.version(1).stores({
      banks: 'id',
      events: 'hash, [job+device+seq], job, sent',
      attachments: 'sha256, job, sent',
      cards: 'job',
      settings: 'name',
    });
  }
}

export const database = new Database();

export async function setting<T>(name: string): Promise<T | undefined> {
  return (await database.settings.get(name))?.value as T | undefined;
}

export async function keep(name: string, value: unknown): Promise<void> {
  await database.settings.put({ name, value });
}

/** SHA-256 of a text or of bytes, in hex. */
export async function sha256(content: string | ArrayBuffer): Promise<string> {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (b) => b.toString(16).padStart(2, '0')).join('');
}
