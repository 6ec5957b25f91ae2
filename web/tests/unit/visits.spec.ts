// Only the latest job of a bank says when somebody comes again.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import type { JobCard, StoredBank } from '../../src/store/database';
import { dueVisits, today } from '../../src/store/visits';
import { checkout } from '../product';

const BANK: StoredBank = { id: 'weir-2', name: 'Weir 2', text: '', sha256: '', base: '', changedAt: 0 };

const byName = (bank: StoredBank, name: string) => bank.name === name;

function card(job: string, bank: string, openedAt: number | undefined, ...dates: string[]): JobCard {
  const nextVisits = dates.map((date) => ({ date, purpose: 'gaskets', by: 'R. Imhof' }));
  const rest = openedAt === undefined ? {} : { openedAt, nextVisits };
  return { job, title: job, bank, phase: 'none', closed: true, peopleOn: 0, stopped: false, changedAt: 0, ...rest };
}

interface Case {
  readonly name: string;
  readonly on: string;
  readonly jobs: readonly {
    readonly job: string;
    readonly bank: string;
    readonly opened: number;
    readonly visits: readonly { readonly date: string; readonly for: string }[];
  }[];
  readonly due: readonly unknown[];
}

/** The cases that `core`'s DueVisitTest holds to as well: both reckon alike. */
const CASES = JSON.parse(readFileSync(join(checkout, 'core/src/test/resources/due-visits.json'), 'utf8')) as readonly Case[];

for (const { name, on, jobs, due } of CASES) {
  test(`as core reckons: ${name}`, () => {
    const cards = jobs.map((j) => ({
      ...card(j.job, j.bank, undefined),
      openedAt: j.opened,
      nextVisits: j.visits.map((v) => ({ date: v.date, purpose: v.for, by: 'R. Imhof' })),
    }));
    const banks = jobs.map((j) => ({ ...BANK, id: j.bank, name: j.bank }));
    for (const order of [cards, cards.toReversed()]) {
      expect(
        dueVisits(banks, order, on, byName).map((d) => ({
          bank: d.bank,
          job: d.job,
          date: d.date,
          for: d.purpose,
          standing: d.days < 0 ? 'overdue' : d.days === 0 ? 'today' : 'ahead',
          days: d.days,
          disputed: d.disputed,
        })),
      ).toEqual(due);
    }
  });
}

test('there are cases', () => {
  expect(CASES.length).toBeGreaterThan(0);
});

test('a later job is the visit, in whatever order the jobs come; a card of an earlier version is older than any', () => {
  const agreed = card('a', 'Weir 2', 1, '2027-05-12');
  const later = card('b', 'Weir 2', 2);
  expect(dueVisits([BANK], [agreed, later], '2027-06-01', byName)).toEqual([]);
  expect(dueVisits([BANK], [later, agreed], '2027-06-01', byName)).toEqual([]);
  expect(dueVisits([BANK], [card('old', 'Weir 2', undefined), agreed], '2027-06-01', byName)).toHaveLength(1);
});

test('the day is the one on the calendar here', () => {
  expect(today(new Date(2027, 0, 5, 23, 59))).toBe('2027-01-05');
});
