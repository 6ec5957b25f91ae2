/** Bank files on this device. */
import { Refused, ask } from '../core/core';
import { database, sha256, type StoredBank } from './database';
import { storeFailure } from './failure';
import { formerNames, nameOf, topValue } from './sync.svelte';

/** A bank file is text of a few hundred kB at most; the server takes no more. */
export const LARGEST_BANK_BYTES = 2_000_000;

export class WrongFile extends Error {}

/** The id of a bank on devices and server: from its name, lower case, digits and dashes. */
export function idOf(name: string): string {
  return name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
}

/**
 * Reads a file that a person chose as a bank file, and checks it.
 *
 * @throws WrongFile where it is not text or too large; Refused where `core` can't make a bank of it
 */
export async function readBankFile(file: File): Promise<string> {
  if (file.size > LARGEST_BANK_BYTES) {
    throw new WrongFile(`${file.name} has ${Math.ceil(file.size / 1e6)} MB; a bank file has 2 MB at most. Choose a *.bank.yaml file.`);
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    throw new WrongFile(`${file.name} is not text in UTF-8. Choose a *.bank.yaml file.`);
  }
  if (text.includes('\0')) {
    throw new WrongFile(`${file.name} is not a text file. Choose a *.bank.yaml file.`);
  }
  const answer = await ask('check', { bank: text });
  if (!answer.ok) {
    throw new Refused(answer.problems);
  }
  if (!answer.result.ok) {
    throw new Refused(answer.result.errors.map((finding) => ({ ...finding, code: '', file: file.name })));
  }
  return text;
}

/** Whether a job was opened for this bank, by the name that its file had then: a bank that is renamed keeps its id, its jobs and whoever is on it. */
export function isJobOf(bank: StoredBank, name: string): boolean {
  return name === bank.name || idOf(name) === bank.id || bank.formerly?.includes(name) === true;
}

/** Where a bank stands, for lists. */
export function siteOf(text: string): string | undefined {
  return topValue(text, 'site');
}

/** A bank file that would take the place of another one. */
export interface Incoming {
  readonly file: string;
  readonly text: string;
  readonly changedAt: number;
  readonly known: StoredBank;
}

/** The bank on this device whose place a file would take. */
export async function replacedBy(text: string): Promise<StoredBank | undefined> {
  const name = nameOf(text) ?? 'bank';
  // The server names its banks by their files: the same bank may be here under another id than its name would give.
  return (await database.banks.filter((b) => b.name === name).first()) ?? (await database.banks.get(idOf(name) || 'bank'));
}

/** Keeps a bank file. A bank of the same id, or without one of the same name, is replaced; jobs keep the file that they were opened with. */
export async function keepBank(text: string, id?: string): Promise<StoredBank> {
  const name = nameOf(text) ?? 'bank';
  const own = id ?? (await replacedBy(text))?.id ?? (idOf(name) || 'bank');
  const known = await database.banks.get(own);
  const bank: StoredBank = {
    id: own,
    name,
    text,
    sha256: await sha256(text),
    base: known?.base ?? '',
    changedAt: Date.now(),
    formerly: formerNames(known, name),
  };
  try {
    await database.banks.put(bank);
  } catch (error) {
    throw storeFailure(error);
  }
  return bank;
}

/** Another version of a bank, saved on the server since this device's own grew from it. */
export interface OtherVersion {
  readonly text: string;
  readonly sha256: string;
}

/** The server's version where it and this device's were both changed; undefined where they agree, or the server is away. */
export async function otherVersion(bank: StoredBank): Promise<OtherVersion | undefined> {
  if (bank.sha256 === bank.base) {
    return undefined;
  }
  try {
    const response = await fetch(`/api/banks/${encodeURIComponent(bank.id)}`, { cache: 'no-store', signal: AbortSignal.timeout(20_000) });
    if (!response.ok) {
      return undefined;
    }
    const text = await response.text();
    const hash = await sha256(text);
    return hash === bank.sha256 || hash === bank.base ? undefined : { text, sha256: hash };
  } catch {
    return undefined;
  }
}

/** This device's version goes to the server in the place of that one. */
export async function keepOwn(bank: StoredBank, other: OtherVersion): Promise<void> {
  await database.banks.update(bank.id, { base: other.sha256 });
}

/** That version takes the place of this device's. */
export async function takeOther(bank: StoredBank, other: OtherVersion): Promise<void> {
  const name = nameOf(other.text) ?? bank.name;
  await database.banks.put({ ...bank, ...other, name, base: other.sha256, changedAt: Date.now(), formerly: formerNames(bank, name) });
}
