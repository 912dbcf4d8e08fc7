import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defaultClientConditions, defineConfig } from 'vite';

// The page is built from the sources of the other packages: one compiler pass, and nothing stale in between.
export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  resolve: {
    conditions: ['source', ...defaultClientConditions],
    // What reads recordings hashes them piece by piece; a browser can only hash what it holds whole.
    alias: { 'node:crypto': join(import.meta.dirname, 'src/engine/acceptance/streamed-hash.ts') },
  },
  worker: { format: 'es' },
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2023', assetsInlineLimit: 0, reportCompressedSize: false },
});
