// Shows that the checks against published figures can fail: with a core whose results are 7 % off,
// every file of them must complain, and nearly every check. Prints those that do not.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Share of the checks that may look at something else than a size, for instance at a direction. */
const MOST_UNMOVED = 0.04;

const projectFolder = fileURLToPath(new URL('../..', import.meta.url));
const report = join(projectFolder, 'tests/.output/bent.json');
mkdirSync(join(projectFolder, 'tests/.output'), { recursive: true });
spawnSync(
  process.execPath,
  [
    join(projectFolder, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--config=tests/vitest.bent.config.ts',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ],
  { cwd: projectFolder, stdio: 'ignore' },
);

const { testResults } = JSON.parse(readFileSync(report, 'utf8'));
const files = testResults.map(({ name, assertionResults }) => ({
  name: basename(name),
  checks: assertionResults.length,
  unmoved: assertionResults.filter(({ status }) => status === 'passed').map(({ title }) => title),
}));
const checks = files.reduce((sum, file) => sum + file.checks, 0);
const unmoved = files.reduce((sum, file) => sum + file.unmoved.length, 0);
const deaf = files.filter((file) => file.checks === file.unmoved.length);

for (const { name, unmoved: titles } of files) {
  for (const title of titles) console.log(`not moved: ${name}: ${title}`);
}
console.log(
  `${checks - unmoved} of ${checks} checks in ${files.length} files notice a core 7 % off`,
);
if (files.length === 0 || deaf.length > 0 || unmoved > MOST_UNMOVED * checks) {
  for (const { name } of deaf) console.error(`${name} cannot fail`);
  process.exitCode = 1;
}
