import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests that take some of their cases in the test command, and all of them here. */
const SAMPLED = [
  'tests/clip/save-copy.test.ts',
  'tests/core/approved-readings.test.ts',
  'tests/core/file-chain.test.ts',
  'tests/core/file/picture-commands.test.ts',
  'tests/core/file/reel-script-powershell.test.ts',
  'tests/core/file/sound-commands.test.ts',
  'tests/core/film-untold.test.ts',
  'tests/core/frame-filter-by-ffmpeg.test.ts',
  'tests/core/gate/recording/claw-noise.test.ts',
  'tests/core/gate/recording/gate-variety.test.ts',
  'tests/scene/flash-safety.test.ts',
  'tests/worksheets/advice.test.ts',
  'tests/worksheets/random-levels.test.ts',
  'tests/worksheets/taken-texts.test.ts',
];

// The long random runs: what the test command takes a sample of (tests/tools/sample-sizes.ts), whole; and
// every case, sum and scene that is drawn.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/{core,worksheets,scene,practice}/**/*.fuzz.ts', ...SAMPLED],
    env: { LONG_RUN: '1' },
    testTimeout: 600_000,
    isolate: false,
  },
});
