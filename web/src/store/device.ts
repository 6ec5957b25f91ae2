/** What this device is called in the logs that it writes. */
import Dexie from 'dexie';
import { idOf } from './banks';
import { database, keep, setting } from './database';

/** With it a name is one device's own, whatever people call it. */
const OWN_LETTERS = 6;
/** A log takes 40. */
const GIVEN_LETTERS = 30;

/** The name under which this device writes into jobs that are new to it; made on the first visit, never used by another. */
export async function deviceName(): Promise<string> {
  return database.transaction('rw', database.settings, async () => {
    const known = await setting<string>('device');
    if (known !== undefined) {
      return known;
    }
    const bytes = crypto.getRandomValues(new Uint8Array(6));
    const made = `t-${Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('')}`;
    await keep('device', made);
    return made;
  });
}

/** How many lines a device has written into a job. */
export async function linesOf(job: string, device: string): Promise<number> {
  return database.events.where('[job+device+seq]').between([job, device, Dexie.minKey], [job, device, Dexie.maxKey]).count();
}

/** Every name that this device has had, the present one first. */
export async function ownNames(): Promise<readonly string[]> {
  const present = await setting<string>('device');
  return [...(present === undefined ? [] : [present]), ...((await setting<readonly string[]>('device-formerly')) ?? [])];
}

/** The name under which this device writes into a job: the one under which it began there, so that its chain of lines and its waits go on. */
export async function deviceIn(job: string): Promise<string> {
  for (const name of await ownNames()) {
    if ((await linesOf(job, name)) > 0) {
      return name;
    }
  }
  return deviceName();
}

/**
 * Gives this device another name in the logs of jobs to come.
 *
 * @param given as people call it; what a log can't take of it is left out
 * @returns the name as it will stand in the logs; undefined where nothing of it can
 */
export async function callDevice(given: string): Promise<string | undefined> {
  const readable = idOf(given).slice(0, GIVEN_LETTERS).replace(/-+$/, '');
  if (readable === '') {
    return undefined;
  }
  const present = await deviceName();
  const made = `${readable}-${present.slice(-OWN_LETTERS)}`;
  if (made !== present) {
    const former = (await ownNames()).filter((name) => name !== made);
    await database.transaction('rw', database.settings, async () => {
      await keep('device-formerly', former);
      await keep('device', made);
    });
  }
  return made;
}
