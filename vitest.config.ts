import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A page that draws in software on a busy machine takes more than the usual second.
    expect: { poll: { timeout: 15_000 } },
    maxWorkers: 2,
  },
});
