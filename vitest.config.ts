import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    pool: 'threads',
    isolate: false,
    include: ['packages/*/src/**/*.test.ts', 'evidence/**/*.test.ts', 'tools/**/*.test.ts'],
    testTimeout: 60_000,
  },
});
