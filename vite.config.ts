import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

/**
 * Builds the page into client/dist. Nothing is inlined: the page is served under a policy that
 * allows neither inline script nor data: fonts.
 */
export default defineConfig({
  root: 'client',
  base: '/',
  plugins: [preact({ devToolsEnabled: false, prefreshEnabled: false })],
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    // The first versions with light-dark(), which is then left as it is: paper stays light in a dark page.
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: {
    host: '127.0.0.1',
    proxy: { '/api': 'http://127.0.0.1:4173', '/live': { target: 'ws://127.0.0.1:4173', ws: true } },
  },
});
