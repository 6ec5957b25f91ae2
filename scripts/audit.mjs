// Audits the parts: their licences, what their makers call deprecated, known weaknesses. No answer of the service reads as "not looked up", never as "none".
// Usage: node scripts/audit.mjs [--shipped LIST]… [--built LIST]… [--lock FILE]… [--accepted FILE] [--at-least N] [--service URL] [--seconds N] [--today DAY]
// Exit: 0 nothing known, 1 something is wrong, or known of a part that is shipped or is malware, 2 wrong use, 3 weaknesses were not looked up (all else is well),
// 4 weaknesses are known of parts that only build and test.
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { acceptance, acceptanceProblems } from './audit/accepted.mjs';
import { licenceProblems } from './audit/licences.mjs';
import { partsOf, unversioned } from './audit/parts.mjs';
import { lookUp } from './audit/weaknesses.mjs';

function options() {
  const list = { type: 'string', multiple: true, default: [] };
  const { values } = parseArgs({
    options: {
      shipped: list,
      built: list,
      lock: list,
      accepted: { type: 'string', default: new URL('audit/accepted.json', import.meta.url).pathname },
      'at-least': { type: 'string', default: '1' },
      service: { type: 'string', default: 'https://api.osv.dev' },
      seconds: { type: 'string', default: '5' },
      today: { type: 'string', default: new Date().toISOString().slice(0, 10) },
    },
  });
  if (!(Number(values.seconds) > 0) || !(Number(values['at-least']) >= 1)) throw new Error('--seconds and --at-least are numbers above 0');
  return values;
}

/** How to find what brings a part in. */
function whoBringsIt(purl) {
  const name = decodeURIComponent(unversioned(purl).replace(/^pkg:\w+\//, ''));
  return purl.startsWith('pkg:npm/') ? `npm explain ${name} (in web or browser)` : `mvn dependency:tree -Dincludes=${name.replace('/', ':')}`;
}

const use = (part) => (part.isShipped ? 'shipped' : 'builds and tests');

function deprecations(parts, rules, today) {
  const wrong = [];
  for (const part of parts.filter((p) => p.deprecated !== undefined)) {
    const taken = acceptance(rules.findings, { id: 'deprecated', aliases: [], purl: part.purl }, today);
    if (taken) console.log(`audit: accepted until ${taken.until}: ${part.name} ${part.version} is deprecated: ${taken.reason}`);
    else
      wrong.push(
        `${part.name} ${part.version} (${use(part)}) is deprecated: ${part.deprecated} Replace it; who brings it in: ${whoBringsIt(part.purl)}. ` +
          `If that can't be done now, accept "deprecated" of ${part.purl} with reason and end.`,
      );
  }
  return wrong;
}

/** Code that was made to harm does so where it builds; any other weakness of a tool harms nobody who uses what it built. */
const stops = (finding, part) => part.isShipped || [finding.id, ...finding.aliases].some((id) => id.startsWith('MAL-'));

/** What is known and not accepted: sentences that stop a build, and sentences about tools. */
function weaknesses(found, parts, rules, today) {
  const wrong = [];
  const ofTools = [];
  for (const finding of found) {
    const part = parts.find((p) => p.purl === finding.purl);
    const names = [finding.id, ...finding.aliases].join(', ');
    const taken = acceptance(rules.findings, finding, today);
    if (taken) {
      console.log(`audit: accepted until ${taken.until}: ${part.name} ${part.version}: ${names}: ${taken.reason}`);
      continue;
    }
    const mended = finding.fixed.length > 0 ? `mended in ${finding.fixed.join(', ')}: raise it` : 'no version that mends it is told: replace it';
    (stops(finding, part) ? wrong : ofTools).push(
      `${part.name} ${part.version} (${use(part)}): ${names}: ${finding.summary || 'nothing more was told'}; ${mended} ` +
        `(who brings it in: ${whoBringsIt(part.purl)}), or accept ${finding.id} of ${unversioned(part.purl)} with reason and end.`,
    );
  }
  return { wrong, ofTools };
}

async function main() {
  const given = options();
  const rules = JSON.parse(readFileSync(given.accepted, 'utf8'));
  const { parts, wrong } = partsOf({ shipped: given.shipped, built: given.built, locks: given.lock });
  if (parts.length < Number(given['at-least'])) wrong.push(`only ${parts.length} parts were found to look at`);
  wrong.push(...acceptanceProblems(rules.findings, given.today), ...licenceProblems(parts, rules), ...deprecations(parts, rules, given.today));
  const { found, undecided } = await lookUp(
    parts.map((p) => p.purl),
    { service: given.service.replace(/\/$/, ''), eachMillis: Number(given.seconds) * 1000, allMillis: Number(given.seconds) * 12_000 },
  );
  const known = weaknesses(found, parts, rules, given.today);
  wrong.push(...known.wrong);

  for (const line of [...wrong, ...known.ofTools]) console.error(`audit: ${line}`);
  const shipped = parts.filter((p) => p.isShipped).length;
  const count = `${parts.length} parts (${shipped} shipped, ${parts.length - shipped} that build and test)`;
  if (undecided !== undefined) {
    console.error(`audit: NOT LOOKED UP: known weaknesses of ${count}: ${new URL(given.service).host}: ${undecided}.`);
    console.error('audit: this does not say that there are none. Run scripts/audit.sh where the service can be reached.');
  }
  if (wrong.length > 0) return 1;
  if (known.ofTools.length > 0) return undecided === undefined ? 4 : 3;
  console.log(
    `audit: ${count}: every licence is accepted, npm's locks mark none as deprecated${undecided === undefined ? ', no weakness is known but what was accepted' : ''}`,
  );
  return undecided === undefined ? 0 : 3;
}

try {
  process.exitCode = await main();
} catch (e) {
  console.error(`audit: ${e.message}`);
  process.exitCode = 2;
}
