// The parts of a build: what CycloneDX lists and npm's locks name, each once, and whether it is shipped or only builds and tests.
import { readFileSync } from 'node:fs';

const OWN = /^pkg:maven\/org\.varwright\//;

/** `pkg:npm/%40a/b@1.0` for `@a/b` 1.0. */
const npmPurl = (name, version) => `pkg:npm/${name.replace('@', '%40')}@${version}`;

/** Without what tells apart two files of one part, such as `?type=jar`. */
const bare = (purl) => purl.replace(/[?#].*$/, '');

/** `pkg:maven/org.ejml/ejml-core` of `pkg:maven/org.ejml/ejml-core@0.46.1`. */
export const unversioned = (purl) => purl.replace(/@[^@/]*$/, '');

function fromList(file) {
  const list = JSON.parse(readFileSync(file, 'utf8'));
  if (list.bomFormat !== 'CycloneDX' || !Array.isArray(list.components)) throw new Error(`${file} is no CycloneDX list`);
  return list.components.map((c) => ({
    purl: bare(c.purl ?? ''),
    name: [c.group, c.name].filter(Boolean).join(c.purl?.startsWith('pkg:npm/') ? '/' : ':'),
    version: c.version,
    licences: (c.licenses ?? []).map((l) => l.expression ?? l.license?.id ?? l.license?.name ?? ''),
  }));
}

function fromLock(file) {
  const lock = JSON.parse(readFileSync(file, 'utf8'));
  if (!(lock.lockfileVersion >= 2) || !lock.packages) throw new Error(`${file} is no lock of npm 7 or later`);
  return Object.entries(lock.packages)
    .filter(([path, p]) => path !== '' && !p.link)
    .map(([path, p]) => {
      const name = p.name ?? path.replace(/^.*node_modules\//, '');
      const licences = p.license ? [typeof p.license === 'string' ? p.license : (p.license.type ?? '')] : [];
      return { purl: npmPurl(name, p.version), name, version: p.version, licences, deprecated: p.deprecated, isShipped: !p.dev && !p.devOptional };
    });
}

/**
 * Every part once, by its purl. One that is shipped in any list is shipped.
 * @param {{ shipped: string[], built: string[], locks: string[] }} files
 */
export function partsOf(files) {
  const parts = new Map();
  const wrong = [];
  const put = (file, part) => {
    if (OWN.test(part.purl)) return;
    if (!part.purl.startsWith('pkg:') || !part.version) {
      wrong.push(`${file}: ${part.name || 'a part'} has no package URL or no version: it can't be looked up`);
      return;
    }
    const known = parts.get(part.purl);
    if (known === undefined) parts.set(part.purl, part);
    else {
      known.isShipped ||= part.isShipped;
      known.deprecated ??= part.deprecated;
      if (known.licences.length === 0) known.licences = part.licences;
    }
  };
  for (const [isShipped, lists] of [
    [true, files.shipped],
    [false, files.built],
  ]) {
    for (const file of lists) for (const part of fromList(file)) put(file, { ...part, isShipped });
  }
  for (const file of files.locks) for (const part of fromLock(file)) put(file, part);
  return { parts: [...parts.values()].sort((a, b) => (a.purl < b.purl ? -1 : 1)), wrong };
}
