// Every version that a build fetches is one exact version: Maven's libraries and plugins, npm's packages. Usage: node scripts/pinned-check.mjs [FOLDER]
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = process.argv[2] ?? '.';
const wrong = [];
let counted = 0;
const EXACT = /^\d[\w.+-]*$/;
const OWN = '${project.version}';

const read = (...path) => readFileSync(join(root, ...path), 'utf8').replaceAll(/<!--.*?-->/gs, '');
const all = (text, tag) => [...text.matchAll(new RegExp(`<${tag}>(.*?)</${tag}>`, 'gs'))].map((m) => m[1]);
const one = (text, tag) => all(text, tag)[0]?.trim();
// What an element says of itself, not its configuration, executions or dependencies.
const head = (text) => text.replaceAll(/<(configuration|executions|exclusions|dependencies)>.*?<\/\1>/gs, '');

const parent = read('pom.xml');
const properties = new Map([...one(parent, 'properties').matchAll(/<([\w.-]+)>(.*?)<\/\1>/g)].map((m) => [m[1], m[2]]));
const resolved = (version) => version.replaceAll(/\$\{([\w.-]+)\}/g, (whole, name) => properties.get(name) ?? whole);
const managedPlugins = all(one(parent, 'pluginManagement'), 'plugin')
  .filter((p) => one(head(p), 'version') !== undefined)
  .map((p) => one(p, 'artifactId'));
const managedLibraries = all(one(parent, 'dependencyManagement'), 'dependency').map((d) => `${one(d, 'groupId')}:${one(d, 'artifactId')}`);
const fromJunitBom = (name) => name.startsWith('org.junit.') && managedLibraries.includes('org.junit:junit-bom');

function check(where, name, version, isManaged) {
  counted++;
  if (version === undefined) {
    if (!isManaged) wrong.push(`${where}: ${name} has no version and none is managed in the parent`);
  } else if (version !== OWN && !EXACT.test(resolved(version))) {
    wrong.push(`${where}: ${name} ${version} is not one exact version`);
  } else if (version !== OWN && /SNAPSHOT$/.test(resolved(version))) {
    wrong.push(`${where}: ${name} ${version} changes without its name changing`);
  }
}

const modules = all(one(parent, 'modules'), 'module');
// The parent's Java itself is a range: the enforcer's rule, not a thing that is fetched.
for (const pom of ['pom.xml', ...modules.map((m) => `${m}/pom.xml`)]) {
  const text = read(pom);
  const plugins = pom === 'pom.xml' ? one(parent, 'pluginManagement') + text.replace(one(parent, 'pluginManagement'), '') : text;
  for (const plugin of all(plugins, 'plugin')) {
    const own = head(plugin);
    check(pom, one(own, 'artifactId'), one(own, 'version'), managedPlugins.includes(one(own, 'artifactId')) || isInBuildOfParent(one(own, 'artifactId')));
  }
  for (const library of all(text, 'dependency')) {
    const own = head(library);
    const name = `${one(own, 'groupId')}:${one(own, 'artifactId')}`;
    check(pom, name, one(own, 'version'), managedLibraries.includes(name) || fromJunitBom(name));
  }
  for (const path of [...all(text, 'path'), ...all(text, 'artifactItem')]) check(pom, one(path, 'artifactId'), one(path, 'version'), false);
}

function isInBuildOfParent(name) {
  const build = parent.replace(one(parent, 'pluginManagement'), '').replace(one(parent, 'profiles'), '');
  return all(build, 'plugin').some((p) => one(p, 'artifactId') === name && one(head(p), 'version') !== undefined);
}

for (const folder of ['web', 'browser']) {
  const stated = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
  if (!existsSync(join(root, folder, 'package-lock.json'))) {
    wrong.push(`${folder}: no package-lock.json`);
    continue;
  }
  const lock = JSON.parse(readFileSync(join(root, folder, 'package-lock.json'), 'utf8')).packages;
  for (const kind of ['dependencies', 'devDependencies']) {
    for (const [name, version] of Object.entries(stated[kind] ?? {})) {
      counted++;
      if (!EXACT.test(version)) wrong.push(`${folder}/package.json: ${name} ${version} is not one exact version`);
      else if (lock[`node_modules/${name}`]?.version !== version) wrong.push(`${folder}/package-lock.json: ${name} is not at ${version}`);
    }
  }
  for (const [path, part] of Object.entries(lock)) {
    if (path === '' || part.link) continue;
    counted++;
    if (!EXACT.test(part.version ?? '') || !part.integrity) wrong.push(`${folder}/package-lock.json: ${path} has no exact version with its hash`);
  }
}

const others = readdirSync(root, { withFileTypes: true }).filter((e) => e.isDirectory() && !modules.includes(e.name) && existsSync(join(root, e.name, 'pom.xml')));
for (const other of others) wrong.push(`${other.name}/pom.xml is no module of the parent`);

if (counted < 100) wrong.push(`only ${counted} versions were found to look at`);
for (const line of wrong) console.error(`pinned-check: ${line}`);
if (wrong.length > 0) process.exit(1);
console.log(`pinned: ${counted} versions, each exact`);
