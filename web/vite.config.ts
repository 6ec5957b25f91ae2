import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { coreFiles } from './plugins/core-files.ts';
import { listedParts } from './plugins/listed-parts.ts';

const core = coreFiles(fileURLToPath(new URL('../browser/target/', import.meta.url)));
const lock = fileURLToPath(new URL('package-lock.json', import.meta.url));
const dist = fileURLToPath(new URL('target/dist/', import.meta.url));
/** The worker takes a file only if it has this content. */
const contentOf = (file: string) =>
  createHash('sha256')
    .update(readFileSync(dist + file))
    .digest('hex');
const server = process.env['VARWRIGHT_SERVER'] ?? 'http://127.0.0.1:8740';

export default defineConfig({
  publicDir: 'static',
  define: { __CORE_BASE__: JSON.stringify(core.base) },
  // Small pictures stay files: the content security policy has no place for more than it needs.
  build: { outDir: 'target/dist', emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  worker: { format: 'es', plugins: () => [listedParts(lock)] },
  // The face of `core` lies beside this module.
  server: { fs: { allow: ['..'] }, proxy: { '/api': { target: server, headers: { origin: server }, changeOrigin: true } } },
  plugins: [
    svelte(),
    core.plugin,
    listedParts(lock),
    VitePWA({
      // The app itself registers its worker, and decides which version is used.
      injectRegister: null,
      // In `static`, so that it is listed by its content like every other file.
      manifest: false,
      strategies: 'injectManifest',
      srcDir: 'src/version',
      filename: 'sw.ts',
      injectManifest: {
        rollupFormat: 'iife',
        sourcemap: false,
        globPatterns: ['**/*.{html,js,mjs,css,svg,png,wasm,webmanifest}'],
        maximumFileSizeToCacheInBytes: 6_000_000,
        manifestTransforms: [(files) => ({ manifest: files.map((file) => ({ ...file, revision: contentOf(file.url) })) })],
      },
    }),
  ],
});
