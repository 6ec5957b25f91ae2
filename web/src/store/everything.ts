/** Everything that this device holds as one file: bank files, and each job as its own file that can be opened elsewhere. */
import { t } from '../words/words.svelte';
import { exportJob, type Exported } from './archive';
import { database } from './database';
import { StoredZip } from './zip';

/** A ZIP without extensions counts its bytes with 32 bits. */
const MOST_BYTES = 4_000_000_000;

export class TooMuch extends Error {}

/** `banks/ID.bank.yaml` and `jobs/NAME.job.zip`, on that day. */
export async function exportEverything(now: Date, progress: (done: number, all: number) => void): Promise<Exported> {
  const zip = new StoredZip();
  const missing: string[] = [];
  let size = 0;
  for (const bank of await database.banks.orderBy('id').toArray()) {
    await zip.add(`banks/${bank.id}.bank.yaml`, new Blob([bank.text]));
  }
  const jobs = await database.cards.orderBy('job').primaryKeys();
  for (const [i, job] of jobs.entries()) {
    progress(i, jobs.length);
    const exported = await exportJob(job);
    size += exported.bytes.size;
    if (size > MOST_BYTES) {
      throw new TooMuch(t('settings.tooMuch'));
    }
    missing.push(...exported.missing.map((name) => `${job}: ${name}`));
    await zip.add(`jobs/${exported.name}`, exported.bytes);
  }
  const day = now.toISOString().slice(0, 10);
  return { name: `varwright-${day}.zip`, bytes: zip.end('application/zip'), missing };
}
