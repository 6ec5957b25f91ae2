// The audit as it is used, against a service of its own on this machine that answers as told.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { KNOWN_BAD } from './weaknesses.mjs';

const AUDIT = fileURLToPath(new URL('../audit.mjs', import.meta.url));
const room = mkdtempSync(join(tmpdir(), 'audit-'));
after(() => rmSync(room, { recursive: true }));

const JAR = 'pkg:maven/org.example/kettle@1.2.0';
const TOOL = 'pkg:npm/%40example/spout@3.0.0';
const file = (name, content) => {
  writeFileSync(join(room, name), JSON.stringify(content));
  return join(room, name);
};
const component = (group, name, version, type, licenses) => ({
  group,
  name,
  version,
  purl: type === 'npm' ? `pkg:npm/${group.replace('@', '%40')}/${name}@${version}` : `pkg:maven/${group}/${name}@${version}?type=jar`,
  licenses,
});
const bom = (...components) => ({ bomFormat: 'CycloneDX', components });
const KETTLE = component('org.example', 'kettle', '1.2.0', 'maven', [{ license: { id: 'Apache-2.0' } }]);
const OWN = component('org.varwright', 'varwright-core', '0.1.0', 'maven', []);
const lock = (more = {}) => ({
  lockfileVersion: 3,
  packages: { '': { name: 'app' }, 'node_modules/@example/spout': { version: '3.0.0', license: '(MIT OR CC0-1.0)', dev: true, ...more } },
});
const RULES = { licences: { shipped: { 'Apache-2.0': 'ours', MIT: 'notice' }, built: { 'MPL-2.0': 'not shipped' } }, readAs: [], findings: [] };
const TAKEN = { id: 'GHSA-aaaa-bbbb-cccc', part: 'pkg:maven/org.example/kettle', until: '2026-12-31', reason: 'the lid is never opened while it boils' };

/** What the service tells: ids by purl, and records by id. */
const RECORD = {
  id: 'GHSA-aaaa-bbbb-cccc',
  aliases: ['CVE-2026-0001'],
  summary: 'Boils over \u001b[2J when the lid is opened',
  affected: [
    { package: { ecosystem: 'npm', name: 'kettle' }, ranges: [{ type: 'SEMVER', events: [{ introduced: '0' }, { fixed: '9.9.9' }] }] },
    {
      package: { ecosystem: 'Maven', name: 'org.example:kettle' },
      ranges: [
        { type: 'GIT', events: [{ fixed: 'abcdef' }] },
        { type: 'ECOSYSTEM', events: [{ introduced: '1.0' }, { fixed: '1.2.5' }] },
        { type: 'ECOSYSTEM', events: [{ introduced: '2.0' }, { fixed: '2.0.3' }] },
      ],
    },
  ],
};
const batch = (known) => (body) => ({
  results: body.queries.map((q) => {
    const told = q.package.purl === KNOWN_BAD ? { vulns: [{ id: 'GHSA-jfh8-c2jp-5v3q' }] } : known(q);
    return told === undefined ? {} : told;
  }),
});
const nothing = batch(() => undefined);
const oneFound = batch((q) => (q.package.purl === JAR ? { vulns: [{ id: RECORD.id }] } : undefined));
const records = (id) => (id === RECORD.id ? RECORD : { id });

/** Runs the audit against a service that answers so; its exit, what it said, and what it asked. */
async function audit({
  answer = nothing,
  record = records,
  status = 200,
  raw,
  silent = false,
  rules = RULES,
  shipped = bom(KETTLE, OWN),
  npm = lock(),
  more = [],
} = {}) {
  const asked = [];
  const server = createServer((request, response) => {
    let text = '';
    request.on('data', (chunk) => (text += chunk));
    request.on('end', () => {
      asked.push({ path: request.url, body: text === '' ? undefined : JSON.parse(text) });
      if (silent) return;
      const isBatch = request.url === '/v1/querybatch';
      const told = isBatch ? answer(JSON.parse(text)) : record(decodeURIComponent(request.url.replace('/v1/vulns/', '')));
      response.writeHead(told === undefined ? 404 : status, { 'content-type': 'application/json' });
      response.end(raw ?? JSON.stringify(told ?? {}));
    });
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  const args = ['--shipped', file('shipped.json', shipped), '--lock', file('lock.json', npm), '--accepted', file('accepted.json', rules)];
  args.push('--service', `http://127.0.0.1:${server.address().port}`, '--seconds', silent ? '1' : '20', '--today', '2026-06-01', ...more);
  const child = spawn(process.execPath, [AUDIT, ...args]);
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => (out += chunk));
  child.stderr.on('data', (chunk) => (err += chunk));
  const code = await new Promise((ended) => child.on('close', ended));
  server.closeAllConnections();
  server.close();
  return { code, out, err, asked };
}

function undecided(result, why) {
  assert.equal(result.code, 3, result.err);
  assert.match(result.err, /NOT LOOKED UP: known weaknesses of 2 parts \(1 shipped, 1 that build and test\)/);
  assert.match(result.err, /does not say that there are none/);
  assert.match(result.err, why);
  assert.doesNotMatch(result.out + result.err, /no weakness is known|\bok\b|\bsafe\b/i);
}

test('nothing known', async () => {
  const { code, out, err, asked } = await audit();
  assert.equal(code, 0, err);
  assert.match(out, /2 parts \(1 shipped, 1 that build and test\): every licence is accepted.*no weakness is known/);
  const purls = asked[0].body.queries.map((q) => q.package.purl);
  assert.deepEqual(purls, [KNOWN_BAD, JAR, TOOL], 'each part once, without what is no name, and not our own');
});

test('found: part, version, ids, the versions that mend it for this part only, what to do', async () => {
  const { code, err, out } = await audit({ answer: oneFound });
  assert.equal(code, 1);
  assert.match(err, /org\.example:kettle 1\.2\.0 \(shipped\): GHSA-aaaa-bbbb-cccc, CVE-2026-0001: Boils over/);
  assert.match(err, /mended in 1\.2\.5, 2\.0\.3: raise it \(who brings it in: mvn dependency:tree -Dincludes=org\.example:kettle\)/);
  assert.doesNotMatch(err, /9\.9\.9|abcdef|\u001b/);
  assert.doesNotMatch(out, /no weakness/);
});

test('found in a tool: told apart from what is shipped, and stops no build unless the tool is malware', async () => {
  const inTool = (id) => audit({ answer: batch((q) => (q.package.purl === TOOL ? { vulns: [{ id }] } : undefined)) });
  const { code, err, out } = await inTool('OSV-2026-7');
  assert.equal(code, 4);
  assert.doesNotMatch(out, /no weakness/);
  assert.equal((await inTool('MAL-2026-7')).code, 1);
  assert.match(err, /@example\/spout 3\.0\.0 \(builds and tests\): OSV-2026-7: nothing more was told; no version that mends it is told/);
  assert.match(err, /npm explain @example\/spout/);
});

test('paged: what is on later pages counts', async () => {
  let page = 0;
  const answer = batch((q) => {
    if (q.package.purl !== JAR) return undefined;
    page++;
    return q.page_token === undefined
      ? { next_page_token: 'two' }
      : q.page_token === 'two'
        ? { vulns: [], next_page_token: 'three' }
        : { vulns: [{ id: RECORD.id }] };
  });
  const { code, err, asked } = await audit({ answer });
  assert.equal(code, 1);
  assert.equal(page, 3);
  assert.match(err, /GHSA-aaaa-bbbb-cccc/);
  assert.deepEqual(asked[2].body.queries, [{ package: { purl: JAR }, page_token: 'three' }], 'only who has more is asked for more');
});

test('pages without end are no answer', async () => {
  undecided(await audit({ answer: batch((q) => (q.package.purl === JAR ? { next_page_token: 'again' } : undefined)) }), /more than 50 pages/);
});

test('a page that fails after something was found: found, and not looked up', async () => {
  const answerOf = (purl) => (body) => {
    if (body.queries[0].page_token !== undefined) return { results: 'broken' };
    return batch((q) => (q.package.purl === purl ? { vulns: [{ id: RECORD.id }], next_page_token: 'two' } : undefined))(body);
  };
  assert.equal((await audit({ answer: answerOf(TOOL) })).code, 3);
  const { code, err } = await audit({ answer: answerOf(JAR) });
  assert.equal(code, 1);
  assert.match(err, /GHSA-aaaa-bbbb-cccc/);
  assert.match(err, /NOT LOOKED UP/);
});

test('accepted, by id or by another name of it', async () => {
  for (const entry of [TAKEN, { ...TAKEN, id: 'CVE-2026-0001', part: JAR }]) {
    const { code, out, err } = await audit({ answer: oneFound, rules: { ...RULES, findings: [entry] } });
    assert.equal(code, 0, err);
    assert.match(out, /accepted until 2026-12-31: org\.example:kettle 1\.2\.0: GHSA-aaaa-bbbb-cccc, CVE-2026-0001: the lid is never opened/);
  }
});

test('accepted for another part or another version is not accepted', async () => {
  for (const part of ['pkg:maven/org.example/kettl', 'pkg:maven/org.example/kettle@1.2.1', 'pkg:npm/%40example/spout']) {
    const { code } = await audit({ answer: oneFound, rules: { ...RULES, findings: [{ ...TAKEN, part }] } });
    assert.equal(code, 1, part);
  }
});

test('an acceptance that has ended is an error, found or not', async () => {
  for (const answer of [oneFound, nothing]) {
    const { code, err } = await audit({ answer, rules: { ...RULES, findings: [{ ...TAKEN, until: '2026-05-31' }] } });
    assert.equal(code, 1);
    assert.match(err, /GHSA-aaaa-bbbb-cccc of pkg:maven\/org\.example\/kettle ended on 2026-05-31: look again/);
    assert.equal(err.includes('Boils over'), answer === oneFound);
  }
});

test('an acceptance needs a reason and an end within a year', async () => {
  for (const [entry, said] of [
    [{ ...TAKEN, reason: 'fine' }, /needs a "reason"/],
    [{ ...TAKEN, until: '2036-01-01' }, /more than a year away/],
    [{ ...TAKEN, until: '2026-13-01' }, /no day like/],
    [{ ...TAKEN, until: undefined }, /no day like/],
  ]) {
    const { code, err } = await audit({ rules: { ...RULES, findings: [entry] } });
    assert.equal(code, 1);
    assert.match(err, said);
  }
});

test('no answer in time', async () => undecided(await audit({ silent: true }), /no answer within 1 s/));
test('nobody there', async () => undecided(await audit({ more: ['--service', 'http://127.0.0.1:1'] }), /no connection/));
test('an answer that is no JSON', async () => undecided(await audit({ raw: '<html>Please sign in</html>' }), /no JSON/));
test('status 500', async () => undecided(await audit({ status: 500 }), /status 500/));
test('a result short', async () => undecided(await audit({ answer: (b) => ({ results: nothing(b).results.slice(1) }) }), /one result for each question/));
test('results of another shape', async () => {
  for (const odd of [null, 7, [], { vulns: 'none' }, { vulns: [{}] }, { vulns: [{ id: 'a\u001b[31mb' }] }, { next_page_token: 5 }]) {
    undecided(await audit({ answer: batch((q) => (q.package.purl === JAR ? odd : undefined)) }), /not the shape/);
  }
});
test('a service that knows nothing of what everybody knows is not believed', async () =>
  undecided(await audit({ answer: (b) => ({ results: b.queries.map(() => ({})) }) }), /knows nothing of pkg:maven\/org\.apache\.logging/));

test('no details: still found', async () => {
  const { code, err } = await audit({ answer: oneFound, record: () => undefined });
  assert.equal(code, 1);
  assert.match(err, /kettle 1\.2\.0 \(shipped\): GHSA-aaaa-bbbb-cccc: nothing more was told/);
});

test('withdrawn by who told it: not found', async () => {
  const { code, err } = await audit({ answer: oneFound, record: () => ({ ...RECORD, withdrawn: '2026-02-01T00:00:00Z' }) });
  assert.equal(code, 0, err);
});

test('a licence that is not accepted, is not named, or is accepted only for tools', async () => {
  for (const [licenses, said] of [
    [[{ license: { id: 'SSPL-1.0' } }], /kettle 1\.2\.0 \(shipped\): its licence, SSPL-1\.0, is not one/],
    [[], /its licence, none that is named/],
    [[{ license: { id: 'MPL-2.0' } }], /MPL-2\.0, is not one/],
    [[{ expression: 'Apache-2.0 AND SSPL-1.0' }], /Apache-2\.0 AND SSPL-1\.0, is not one/],
    [[{ license: { name: 'Apache-2.0 OR' } }], /Apache-2\.0 OR, is not one/],
    [[{ license: { name: 'constructor' } }], /constructor, is not one/],
  ]) {
    const { code, err } = await audit({ shipped: bom({ ...KETTLE, licenses }) });
    assert.equal(code, 1);
    assert.match(err, said);
  }
  for (const licenses of [[{ license: { id: 'SSPL-1.0' } }, { license: { id: 'MIT' } }], [{ expression: '(SSPL-1.0 OR MIT) AND Apache-2.0' }]]) {
    assert.equal((await audit({ shipped: bom({ ...KETTLE, licenses }) })).code, 0);
  }
  assert.equal((await audit({ npm: lock({ license: 'MPL-2.0' }) })).code, 0);
  assert.equal((await audit({ npm: lock({ license: 'MPL-2.0', dev: false }) })).code, 1);
});

test('what a licence says is read as another only where it is written down and still so', async () => {
  const readAs = [{ part: 'pkg:maven/org.example/kettle', says: 'The Kettle License', is: 'MIT', why: 'another name' }];
  const licenses = [{ license: { name: 'The Kettle License' } }];
  assert.equal((await audit({ shipped: bom({ ...KETTLE, licenses }), rules: { ...RULES, readAs } })).code, 0);
  const stale = await audit({ rules: { ...RULES, readAs } });
  assert.equal(stale.code, 1);
  assert.match(stale.err, /no part is so any more/);
});

test('deprecated, and accepted', async () => {
  const npm = lock({ deprecated: 'Use teapot instead.' });
  const { code, err } = await audit({ npm });
  assert.equal(code, 1);
  assert.match(err, /@example\/spout 3\.0\.0 \(builds and tests\) is deprecated: Use teapot instead\. Replace it; who brings it in: npm explain/);
  const rules = { ...RULES, findings: [{ ...TAKEN, id: 'deprecated', part: TOOL }] };
  assert.equal((await audit({ npm, rules })).code, 0);
});

test('what is wrong is told where nothing could be looked up, too', async () => {
  const { code, err } = await audit({ silent: true, npm: lock({ deprecated: 'Use teapot instead.' }) });
  assert.equal(code, 1);
  assert.match(err, /teapot/);
  assert.match(err, /NOT LOOKED UP/);
});

test('too few parts, a part without a name, a file that is no list', async () => {
  assert.match((await audit({ more: ['--at-least', '3'] })).err, /only 2 parts were found/);
  const nameless = await audit({ shipped: bom(KETTLE, { name: 'lid', version: '1' }) });
  assert.equal(nameless.code, 1);
  assert.match(nameless.err, /lid has no package URL/);
  const none = await audit({ shipped: {} });
  assert.equal(none.code, 2);
  assert.match(none.err, /no CycloneDX list/);
});
