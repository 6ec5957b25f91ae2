import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const FILES = ['wasm/varwright-core.wasm', 'wasm/wasm-gc-module-runtime.min.js', 'js/varwright-core.mjs'];
const TYPES: Record<string, string> = { wasm: 'application/wasm', js: 'text/javascript', mjs: 'text/javascript' };

/** Puts the compiled `core` beside the app, in a folder named by its content, so that a browser may keep it for good. */
export function coreFiles(target: string): { plugin: Plugin; base: string } {
  const missing = FILES.filter((file) => !existsSync(join(target, file)));
  if (missing.length > 0) {
    throw new Error(`${missing.join(', ')} missing in ${target}: build the module "browser" first (mvn -pl browser -am package)`);
  }
  const hash = createHash('sha256');
  FILES.forEach((file) => hash.update(readFileSync(join(target, file))));
  const folder = `core-${hash.digest('hex').slice(0, 12)}`;
  const named = new Map(FILES.map((file) => [`${folder}/${file.slice(file.indexOf('/') + 1)}`, join(target, file)]));
  return {
    base: `/${folder}/`,
    plugin: {
      name: 'varwright-core-files',
      configureServer(server) {
        server.middlewares.use((request, response, next) => {
          const file = named.get((request.url ?? '').slice(1).split('?')[0] ?? '');
          if (file === undefined) {
            next();
            return;
          }
          response.setHeader('content-type', TYPES[file.slice(file.lastIndexOf('.') + 1)] ?? 'text/plain');
          response.end(readFileSync(file));
        });
      },
      generateBundle() {
        named.forEach((file, fileName) => this.emitFile({ type: 'asset', fileName, source: readFileSync(file) }));
      },
    },
  };
}
