/** When somebody comes to each bank again, out of the latest job on it. Reckoned here, for the first screen must not wait for `core`; one table of cases holds both to the same. */
import type { AgreedVisit, JobCard, StoredBank } from './database';

export interface Due extends AgreedVisit {
  /** The bank file on this device; missing where only the job is here. */
  readonly bankId: string | undefined;
  readonly bank: string;
  readonly job: string;
  /** Days until then; negative where it is overdue. */
  readonly days: number;
  /** Devices disagree; this is the earliest day. */
  readonly disputed: boolean;
}

/** The calendar's day here, as it is written in the log. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** Whether a job that names a bank is of that one. */
type IsJobOf = (bank: StoredBank, name: string) => boolean;

/** As `core` sorts texts, in every language alike. */
function byCharacters(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

/** The later one is the one opened later; of two opened in the same moment, the one with the later name. */
function opened(one: JobCard, other: JobCard): number {
  return (one.openedAt ?? 0) - (other.openedAt ?? 0) || byCharacters(one.job, other.job);
}

/** Agreed visits, the earliest first. A job opened later is the visit, so only a bank's latest job speaks. */
export function dueVisits(banks: readonly StoredBank[], cards: readonly JobCard[], day: string, isJobOf: IsJobOf): readonly Due[] {
  const latest = new Map<string, { bank: StoredBank | undefined; card: JobCard }>();
  for (const card of cards) {
    const bank = banks.find((b) => isJobOf(b, card.bank));
    const key = bank?.id ?? card.bank;
    const known = latest.get(key)?.card;
    if (known === undefined || opened(card, known) >= 0) {
      latest.set(key, { bank, card });
    }
  }
  return [...latest.values()]
    .flatMap(({ bank, card }) => {
      const visits = [...(card.nextVisits ?? [])].sort((a, b) => byCharacters(a.date, b.date));
      const first = visits[0];
      return first === undefined
        ? []
        : [
            {
              ...first,
              bankId: bank?.id,
              bank: bank?.name ?? card.bank,
              job: card.job,
              days: daysBetween(day, first.date),
              disputed: visits.length > 1,
            },
          ];
    })
    .sort((a, b) => byCharacters(a.date, b.date) || byCharacters(a.bank, b.bank));
}
