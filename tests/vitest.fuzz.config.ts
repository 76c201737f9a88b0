import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The long random runs: every worksheet, ten thousand entries each; every drawn recording of a gate, every
// film clip, case, sum and scene. The test command runs the worksheets alone, with fewer entries.
const folders =
  process.env['FUZZ_ROUNDS'] === undefined ? '{core,worksheets,scene,practice}' : 'worksheets';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: [`tests/${folders}/**/*.fuzz.ts`],
    testTimeout: 300_000,
  },
});
