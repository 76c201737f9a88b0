import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The long random runs: every worksheet, ten thousand entries each; every drawn recording of a gate;
// every film clip; a thousand seeds of each kind of practice.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/{core,worksheets,scene,practice}/**/*.fuzz.ts'],
    testTimeout: 300_000,
  },
});
