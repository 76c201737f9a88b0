import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Rules for the built site; they read dist/ and need a build first.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/site/**/*.test.ts'],
    // Long enough for a machine that is busy elsewhere; it ends only what hangs.
    testTimeout: 180_000,
    // The pages are parsed once for all files.
    isolate: false,
  },
});
