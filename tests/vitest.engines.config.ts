import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// A smoke suite of the built site in the engines that the other browser tests do not use; needs a build.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/engines/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    // As in the other browser: a test that an engine's own crash broke may run again, a wrong page fails always.
    retry: 2,
  },
});
