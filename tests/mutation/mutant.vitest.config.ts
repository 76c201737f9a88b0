import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vitest/config';

// Runs tests with one source file replaced by its mutant; started by run.ts, which names both.
const file = process.env['MUTANT_FILE'];
const text = process.env['MUTANT_TEXT'];

const mutant: Plugin = {
  name: 'mutant',
  enforce: 'pre',
  load(id) {
    if (file === undefined || text === undefined || id.split('?')[0] !== file) return undefined;
    return readFileSync(text, 'utf8');
  },
};

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  plugins: [mutant],
  test: {
    include: ['tests/{quantity,core,published,worksheets,content,pictures,ui}/**/*.test.ts'],
    // Beside other work a round may be slow; run.ts ends what does not end.
    testTimeout: 600_000,
    bail: 1,
    // Modules kept from a run without the change would stand for the changed ones.
    fsModuleCache: false,
    passWithNoTests: true,
  },
});
