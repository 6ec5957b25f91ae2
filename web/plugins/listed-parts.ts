import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

interface Locked {
  readonly packages: Readonly<Record<string, { readonly dev?: boolean }>>;
}

/** Breaks the build where code of a package comes into the app that the release would not list, because `package.json` calls it a tool. */
export function listedParts(lockFile: string): Plugin {
  const lock = JSON.parse(readFileSync(lockFile, 'utf8')) as Locked;
  return {
    name: 'varwright-listed-parts',
    generateBundle(_, bundle) {
      const folders = Object.values(bundle)
        .flatMap((each) => (each.type === 'chunk' ? Object.keys(each.modules) : []))
        .flatMap((id) => /(?:node_modules\/(?:@[^/]+\/)?[^/]+\/)+/.exec(id)?.[0].slice(0, -1) ?? []);
      const tools = [...new Set(folders)].filter((folder) => lock.packages[folder]?.dev ?? !(folder in lock.packages));
      if (tools.length > 0) {
        this.error(`${tools.join(', ')}: compiled into the app, so it belongs under "dependencies" in package.json`);
      }
    },
  };
}
