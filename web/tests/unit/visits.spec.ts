// Only the latest job of a bank says when somebody comes again.
import { expect, test } from '@playwright/test';
import type { JobCard, StoredBank } from '../../src/store/database';
import { dueVisits, today } from '../../src/store/visits';

const BANK: StoredBank = { id: 'weir-2', name: 'Weir 2', text: '', sha256: '', base: '', changedAt: 0 };

const byName = (bank: StoredBank, name: string) => bank.name === name;

function card(job: string, bank: string, openedAt: number | undefined, ...dates: string[]): JobCard {
  const nextVisits = dates.map((date) => ({ date, purpose: 'gaskets', by: 'R. Imhof' }));
  const rest = openedAt === undefined ? {} : { openedAt, nextVisits };
  return { job, title: job, bank, phase: 'none', closed: true, peopleOn: 0, stopped: false, changedAt: 0, ...rest };
}

test('visits are sorted by day; overdue, due and ahead by the calendar', () => {
  const cards = [card('a', 'Weir 2', 1, '2028-03-01'), card('b', 'Fen 1', 1, '2028-02-27'), card('c', 'Mill', 1, '2028-02-28')];
  const due = dueVisits([BANK], cards, '2028-02-28', byName);
  expect(due.map((d) => [d.bank, d.days])).toEqual([
    ['Fen 1', -1],
    ['Mill', 0],
    ['Weir 2', 2],
  ]);
});

test('a later job is the visit, in whatever order the jobs come; a card of an earlier version is older than any', () => {
  const agreed = card('a', 'Weir 2', 1, '2027-05-12');
  const later = card('b', 'Weir 2', 2);
  expect(dueVisits([BANK], [agreed, later], '2027-06-01', byName)).toEqual([]);
  expect(dueVisits([BANK], [later, agreed], '2027-06-01', byName)).toEqual([]);
  expect(dueVisits([BANK], [card('old', 'Weir 2', undefined), agreed], '2027-06-01', byName)).toHaveLength(1);
});

test('where devices disagree the earliest day counts, and it says so', () => {
  const due = dueVisits([BANK], [card('a', 'Weir 2', 1, '2027-05-12', '2027-04-01')], '2027-04-02', byName);
  expect(due).toMatchObject([{ date: '2027-04-01', days: -1, disputed: true }]);
});

test('the day is the one on the calendar here', () => {
  expect(today(new Date(2027, 0, 5, 23, 59))).toBe('2027-01-05');
});
