import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { coreFiles } from './plugins/core-files.ts';

const core = coreFiles(fileURLToPath(new URL('../browser/target/', import.meta.url)));
const server = process.env['VARWRIGHT_SERVER'] ?? 'http://127.0.0.1:8740';

export default defineConfig({
  publicDir: 'static',
  define: { __CORE_BASE__: JSON.stringify(core.base) },
  // Small pictures stay files: the content security policy has no place for more than it needs.
  build: { outDir: 'target/dist', emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  worker: { format: 'es' },
  // The face of `core` lies beside this module.
  server: { fs: { allow: ['..'] }, proxy: { '/api': { target: server, headers: { origin: server }, changeOrigin: true } } },
  plugins: [
    svelte(),
    core.plugin,
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      manifest: {
        name: 'Varwright',
        short_name: 'Varwright',
        description: 'Shunt capacitor banks: from alarm to report',
        display: 'standalone',
        start_url: '/',
        background_color: '#f6f4ee',
        theme_color: '#1d2b33',
        icons: [
          { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
          { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{html,js,css,svg,png,wasm,webmanifest}'],
        // Kept when first used: only a browser without WebAssembly's garbage collection loads it.
        runtimeCaching: [
          { urlPattern: /\/core-[0-9a-f]+\/varwright-core\.mjs$/, handler: 'CacheFirst', options: { cacheName: 'core-fallback' } },
        ],
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//, /^\/healthz$/],
        maximumFileSizeToCacheInBytes: 6_000_000,
        cleanupOutdatedCaches: true,
        sourcemap: false,
      },
    }),
  ],
});
