// What somebody has looked at and taken: one finding of one part, why, and until when.
import { unversioned } from './parts.mjs';

const LONGEST_DAYS = 366;
const DAY = /^\d{4}-\d\d-\d\d$/;
const days = (date) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;

const isText = (value, least) => typeof value === 'string' && value.trim().length >= least;

/** What is wrong with the entries themselves, in sentences. An expired one is an error, not a reminder. */
export function acceptanceProblems(entries, today) {
  const wrong = [];
  for (const e of entries) {
    const name = `accepted ${e.id ?? 'finding'} of ${e.part ?? 'a part'}`;
    if (!isText(e.id, 3) || !isText(e.part, 8) || !e.part.startsWith('pkg:')) wrong.push(`${name}: needs "id" and "part" (pkg:…)`);
    if (!isText(e.reason, 20)) wrong.push(`${name}: needs a "reason" that the next person can judge`);
    if (!DAY.test(e.until ?? '') || Number.isNaN(days(e.until))) wrong.push(`${name}: "until" is no day like 2027-01-31`);
    else if (e.until < today) wrong.push(`${name} ended on ${e.until}: look again, then raise the part, or write a new day and reason`);
    else if (days(e.until) - days(today) > LONGEST_DAYS) wrong.push(`${name}: ${e.until} is more than a year away`);
  }
  return wrong;
}

/** Whether an entry that still holds takes this finding, by its id or another name of it. */
export function acceptance(entries, finding, today) {
  return entries.find(
    (e) => e.until >= today && [finding.id, ...finding.aliases].includes(e.id) && (e.part === finding.purl || e.part === unversioned(finding.purl)),
  );
}
