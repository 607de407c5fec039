// Development server and build of the browser client. Everything it serves is its own: fonts and icons are files of the
// build (none inlined, so that `font-src 'self'` holds), and no page carries an inline script.
import { fileURLToPath } from 'node:url';

import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const serverUrl = process.env['HOLDFAST_SERVER'] ?? 'http://127.0.0.1:4650';
const serverPaths = ['/api', '/openapi.json', '/docs', '/healthz', '/readyz', '/metrics'];
const libs = fileURLToPath(new URL('../../libs', import.meta.url));

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react()],
  resolve: {
    alias: [{ find: /^@holdfast\/([a-z-]+)$/, replacement: `${libs}/$1/src/index.ts` }],
  },
  server: {
    host: '127.0.0.1',
    proxy: {
      ...Object.fromEntries(serverPaths.map((path) => [path, { target: serverUrl }])),
      '/live': { target: serverUrl, ws: true },
    },
  },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: ['chrome123', 'firefox121', 'safari17.5'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: true,
    rolldownOptions: {
      // Our libraries are pure: a module of theirs of which nothing is used may be left out whole, schemas and all.
      treeshake: { moduleSideEffects: [{ test: /\/libs\/[a-z-]+\/src\//, sideEffects: false }] },
    },
  },
});
