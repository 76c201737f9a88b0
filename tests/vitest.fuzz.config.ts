import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The long random runs: every worksheet, ten thousand entries each; every drawn recording of a gate; every
// film clip.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/{core,worksheets,scene}/**/*.fuzz.ts'],
    testTimeout: 300_000,
  },
});
