import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    pool: 'threads',
    // Of its own accord it leaves one core idle, which is half of a machine with two.
    maxWorkers: availableParallelism(),
    isolate: false,
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'checks',
          include: ['packages/*/src/**/*.test.ts', 'evidence/**/*.test.ts', 'tools/**/*.test.ts'],
          sequence: { groupOrder: 0 },
        },
      },
      {
        // After the others and one file after another: they share one browser, and it wants the machine for itself.
        extends: true,
        test: {
          name: 'browser',
          include: ['packages/web/browser/**/*.test.ts'],
          globalSetup: ['packages/web/browser/once.ts'],
          sequence: { groupOrder: 1 },
          maxWorkers: 1,
          expect: { poll: { timeout: 15_000 } },
        },
      },
    ],
  },
});
