import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Files that need modules of their own: one puts another module in the place of a real one, the other counts
 * what runs from the moment it is loaded. */
const ALONE = ['tests/ui/bench-table.test.ts', 'tests/worksheets/every-verdict-reached.test.ts'];

// No Astro here: proof that core and worksheets stand alone.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // Long enough for a machine that is busy elsewhere; it ends only what hangs.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    setupFiles: 'tests/tools/draw-by-turn.ts',
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: [
            'tests/{quantity,core,published,worksheets,content,walls,pictures,scene,drawings,clip,ui,practice,offline,mutation}/**/*.test.ts',
          ],
          exclude: ALONE,
          // Loading core and worksheets anew for each of some three hundred files takes longer than the
          // tests of most. Both are free of state, and what a test plants it takes away again.
          isolate: false,
          globalSetup: 'tests/tools/before-unit-tests.ts',
        },
      },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
  },
});
