import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Rules for the built site; they read dist/ and need a build first.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/site/**/*.test.ts'],
    testTimeout: 60_000,
  },
});
