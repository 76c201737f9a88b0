import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// No Astro here: proof that core and worksheets stand alone.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: [
      'tests/{quantity,core,published,worksheets,content,walls,pictures,scene,drawings,clip,ui,offline,mutation}/**/*.test.ts',
    ],
    globalSetup: 'tests/tools/say-missing-tools.ts',
    testTimeout: 60_000,
  },
});
