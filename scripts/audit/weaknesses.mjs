// Known weaknesses of parts, asked of a service that speaks OSV's interface (https://google.github.io/osv.dev/api/). No answer is never "none".

/** The service must know this one, whose weakness everybody knows since 2021; one that does not is not believed. */
export const KNOWN_BAD = 'pkg:maven/org.apache.logging.log4j/log4j-core@2.14.1';
const AT_ONCE = 500;
const MOST_PAGES = 50;

class NoAnswer extends Error {}

async function ask(url, body, end) {
  const left = Math.min(end.each, end.all - Date.now());
  if (left <= 0) throw new NoAnswer('the time for all questions was up');
  let response;
  let text;
  try {
    response = await fetch(url, {
      method: body === undefined ? 'GET' : 'POST',
      body: body === undefined ? undefined : JSON.stringify(body),
      headers: body === undefined ? {} : { 'content-type': 'application/json' },
      redirect: 'error',
      signal: AbortSignal.timeout(left),
    });
    text = await response.text();
  } catch (e) {
    throw new NoAnswer(e.name === 'TimeoutError' ? `no answer within ${Math.ceil(left / 1000)} s` : `no connection (${e.cause?.code ?? e.message})`);
  }
  if (response.status !== 200) throw new NoAnswer(`status ${response.status}`);
  try {
    return JSON.parse(text);
  } catch {
    throw new NoAnswer('the answer is no JSON');
  }
}

const isId = (id) => typeof id === 'string' && /^[\w.:-]{3,60}$/.test(id);

function idsOf(result) {
  if (result === null || typeof result !== 'object' || Array.isArray(result)) throw new NoAnswer('the answer has not the shape that was agreed');
  const found = result.vulns ?? [];
  if (!Array.isArray(found) || !found.every((v) => isId(v?.id))) throw new NoAnswer('the answer has not the shape that was agreed');
  return found.map((v) => v.id);
}

/** Ids of each purl, as far as they were told. */
async function idsByPurl(purls, service, end, found) {
  let open = purls.map((purl) => ({ package: { purl } }));
  for (let page = 0; open.length > 0; page++) {
    if (page > MOST_PAGES) throw new NoAnswer(`more than ${MOST_PAGES} pages of answers`);
    const next = [];
    for (let from = 0; from < open.length; from += AT_ONCE) {
      const queries = open.slice(from, from + AT_ONCE);
      const answer = await ask(`${service}/v1/querybatch`, { queries }, end);
      if (!Array.isArray(answer?.results) || answer.results.length !== queries.length) throw new NoAnswer('the answer has not one result for each question');
      answer.results.forEach((result, i) => {
        const purl = queries[i].package.purl;
        const ids = idsOf(result);
        if (ids.length > 0) found.set(purl, new Set([...(found.get(purl) ?? []), ...ids]));
        const token = result.next_page_token;
        if (token !== undefined && token !== '') {
          if (typeof token !== 'string') throw new NoAnswer('the answer has not the shape that was agreed');
          next.push({ package: { purl }, page_token: token });
        }
      });
    }
    open = next;
  }
}

// Without what could steer a terminal.
const plain = (text) =>
  String(text ?? '')
    .replaceAll(/[\p{Cc}\p{Cf}]+/gu, ' ')
    .trim()
    .slice(0, 120);

/** What a record says of one package: in words, its other names, the versions that mend it. */
function told(record, purl) {
  const [kind, path] = purl.replace(/^pkg:/, '').split(/\/(.*)/s);
  const name = decodeURIComponent(path.replace(/@[^@/]*$/, ''));
  const inTheirs = kind === 'maven' ? name.replace('/', ':') : name;
  const about = (Array.isArray(record.affected) ? record.affected : []).filter((a) => a?.package?.name === inTheirs);
  const fixed = about
    .flatMap((a) => a.ranges ?? [])
    .filter((r) => r.type !== 'GIT')
    .flatMap((r) => r.events ?? [])
    .map((e) => plain(e.fixed))
    .filter(Boolean);
  return {
    summary: plain(record.summary ?? record.details),
    aliases: (Array.isArray(record.aliases) ? record.aliases : []).filter(isId),
    fixed: [...new Set(fixed)],
    isWithdrawn: record.withdrawn !== undefined,
  };
}

/**
 * What is known of the parts. `undecided` says why something was not looked up; then an empty `found` means nothing.
 * @param {string[]} purls
 * @param {{ service: string, eachMillis: number, allMillis: number }} how
 * @returns {Promise<{ found: { purl: string, id: string, summary: string, aliases: string[], fixed: string[] }[], undecided: string | undefined }>}
 */
export async function lookUp(purls, how) {
  const end = { each: how.eachMillis, all: Date.now() + how.allMillis };
  const ids = new Map();
  let undecided;
  try {
    await idsByPurl([KNOWN_BAD, ...purls.filter((p) => p !== KNOWN_BAD)], how.service, end, ids);
    if (!ids.has(KNOWN_BAD)) undecided = `it knows nothing of ${KNOWN_BAD}, whose weakness is known everywhere`;
  } catch (e) {
    if (!(e instanceof NoAnswer)) throw e;
    undecided = e.message;
  }
  if (!purls.includes(KNOWN_BAD)) ids.delete(KNOWN_BAD);
  const records = new Map();
  const found = [];
  for (const [purl, named] of ids) {
    for (const id of named) {
      // What is named stays found, even where nothing more is told of it.
      if (!records.has(id)) {
        records.set(
          id,
          await ask(`${how.service}/v1/vulns/${encodeURIComponent(id)}`, undefined, end).catch((e) => {
            if (!(e instanceof NoAnswer)) throw e;
            undecided ??= `of ${id}: ${e.message}`;
            return {};
          }),
        );
      }
      const { isWithdrawn, ...rest } = told(records.get(id) ?? {}, purl);
      if (!isWithdrawn) found.push({ purl, id, ...rest });
    }
  }
  return { found, undecided };
}
