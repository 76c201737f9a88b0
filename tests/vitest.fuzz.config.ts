import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The long random runs: what the test command takes a sample of (tests/tools/sample-sizes.ts), whole; and
// every case, sum and scene that is drawn.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/{core,worksheets,scene,practice}/**/*.fuzz.ts'],
    testTimeout: 600_000,
    isolate: false,
  },
});
