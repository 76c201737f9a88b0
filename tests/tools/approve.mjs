// Writes approved/*.txt and input-fields.yaml as the sheets print them now (npm run approve). What they
// then differ by is for a person to read, line by line, before it is committed.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const projectFolder = fileURLToPath(new URL('../..', import.meta.url));
const { status } = spawnSync(
  process.execPath,
  [
    join(projectFolder, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--config=tests/vitest.config.ts',
    '--reporter=default',
    'tests/worksheets/approved-texts.test.ts',
    'tests/worksheets/approved-box.test.ts',
    'tests/worksheets/input-fields.test.ts',
    'tests/core/approved-constants.test.ts',
    'tests/core/approved-readings.test.ts',
    'tests/core/approved-examples.test.ts',
    'tests/core/approved-steps.test.ts',
    'tests/core/approved-film-steps.test.ts',
    'tests/core/approved-sound-steps.test.ts',
  ],
  { cwd: projectFolder, stdio: 'inherit', env: { ...process.env, APPROVE: 'yes' } },
);
spawnSync('git', ['diff', '--stat', '--', 'tests'], {
  cwd: projectFolder,
  stdio: 'inherit',
});
console.log('Read the difference (git diff tests), limits and numbers above all.');
process.exitCode = status ?? 1;
