// Writes a .gz twin beside every file worth it, and holds the size of a first visit to its limit.
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const dist = fileURLToPath(new URL('../target/dist/', import.meta.url));
const LIMIT_BYTES = 1_600_000;
let first = 0;
let later = 0;
for (const entry of readdirSync(dist, { recursive: true, withFileTypes: true })) {
  const file = join(entry.parentPath ?? entry.path, entry.name);
  if (!entry.isFile() || !/\.(html|js|mjs|css|svg|wasm|webmanifest)$/.test(entry.name)) {
    continue;
  }
  const squeezed = gzipSync(readFileSync(file), { level: 9 });
  if (squeezed.length < statSync(file).size) {
    writeFileSync(`${file}.gz`, squeezed);
  }
  // The fallback in JavaScript is fetched by the worker once the page is there, so that the app is whole on the device.
  if (entry.name.endsWith('.mjs')) {
    later += squeezed.length;
  } else {
    first += squeezed.length;
  }
}
console.log(
  `first visit: ${(first / 1e6).toFixed(2)} MB compressed, core included (limit ${LIMIT_BYTES / 1e6} MB), and ${(later / 1e6).toFixed(2)} MB of fallback behind it, in ${relative(process.cwd(), dist)}`,
);
if (first > LIMIT_BYTES) {
  console.error('over the limit: find what grew before raising it');
  process.exit(1);
}
