// The one test command (npm test): every check in order, cheapest first, up to the first failure.
// Ends with a table of the stages and one plain line, "N passed, N failed".
// Stage names after -- run only those: npm test -- unit site
import './guard-node.mjs';
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const projectFolder = fileURLToPath(new URL('..', import.meta.url));
const modules = join(projectFolder, 'node_modules');
const output = join(projectFolder, 'tests/.output');

/** The script behind a command of a package, so that it runs under this very Node. */
function program(packageName, command = packageName) {
  const folder = join(modules, packageName);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return join(folder, typeof bin === 'string' ? bin : bin[command]);
}

function vitest(name, config) {
  const report = join(output, `${name}.json`);
  return {
    name,
    command: [
      program('vitest'),
      'run',
      `--config=tests/${config}`,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    report,
    count: ({ numPassedTests, numFailedTests, numPendingTests, numTodoTests }) => ({
      passed: numPassedTests,
      failed: numFailedTests,
      skipped: numPendingTests + numTodoTests,
    }),
  };
}

const stages = [
  {
    name: 'format',
    command: [program('prettier'), '--check', '.', '--log-level', 'warn'],
  },
  {
    name: 'lint',
    command: [program('eslint'), '--config', 'tests/eslint.config.js', '.', '--max-warnings', '0'],
  },
  { name: 'types', command: [program('astro'), 'check'] },
  vitest('unit', 'vitest.config.ts'),
  // The full ten thousand take about a minute of one core: npm run test:fuzz.
  { ...vitest('fuzz', 'vitest.fuzz.config.ts'), environment: { FUZZ_ROUNDS: '2000' } },
  { name: 'build', npm: ['run', 'build'] },
  vitest('site', 'vitest.site.config.ts'),
  {
    name: 'browser',
    command: [
      program('@playwright/test', 'playwright'),
      'test',
      '--config=tests/playwright.config.ts',
    ],
    report: join(output, 'playwright.json'),
    count: ({ stats }) => ({
      passed: stats.expected + stats.flaky,
      failed: stats.unexpected,
      skipped: stats.skipped,
    }),
  },
  { name: 'bench', command: [join(projectFolder, 'tests/bench/run.mjs')], onlyPrints: true },
];

function run({ command, npm, environment = {} }) {
  const npmScript = process.env.npm_execpath;
  const [file, ...args] =
    npm === undefined
      ? [process.execPath, ...command]
      : npmScript === undefined
        ? ['npm', ...npm]
        : [process.execPath, npmScript, ...npm];
  const { status, error } = spawnSync(file, args, {
    cwd: projectFolder,
    stdio: 'inherit',
    env: {
      ...process.env,
      // Child tools that start "node" themselves get the same one.
      PATH: [join(modules, '.bin'), process.env.PATH].join(delimiter),
      ASTRO_TELEMETRY_DISABLED: '1',
      ...environment,
    },
  });
  if (error !== undefined) console.error(error.message);
  return status === 0;
}

/** Tests of a stage; a check without tests counts as one, and so does a crash before the report. */
function countTests({ report, count }, isGood) {
  const whole = { passed: isGood ? 1 : 0, failed: isGood ? 0 : 1, skipped: 0 };
  if (report === undefined) return whole;
  try {
    const counted = count(JSON.parse(readFileSync(report, 'utf8')));
    return { ...counted, failed: isGood ? counted.failed : Math.max(1, counted.failed) };
  } catch {
    return whole;
  }
}

const chosen = process.argv.slice(2);
const unknown = chosen.filter((name) => stages.every((stage) => stage.name !== name));
if (unknown.length > 0) {
  const known = stages.map(({ name }) => name).join(', ');
  console.error(`No stage ${unknown.join(', ')}. Known: ${known}`);
  process.exit(2);
}

mkdirSync(output, { recursive: true });
const rows = [];
let isStopped = false;
for (const stage of stages) {
  if (isStopped || (chosen.length > 0 && !chosen.includes(stage.name))) {
    rows.push({
      name: stage.name,
      result: 'not run',
      seconds: 0,
      passed: 0,
      failed: 0,
      skipped: 0,
    });
    continue;
  }
  console.log(`\n── ${stage.name} ${'─'.repeat(60 - stage.name.length)}`);
  if (stage.report !== undefined) rmSync(stage.report, { force: true });
  const start = performance.now();
  const isGood = run(stage);
  const seconds = (performance.now() - start) / 1000;
  if (stage.onlyPrints === true) {
    const result = isGood ? 'printed' : 'broke off';
    rows.push({ name: stage.name, result, seconds, passed: 0, failed: 0, skipped: 0 });
    continue;
  }
  const tests = countTests(stage, isGood);
  // A report that tells of failures outranks an exit code that does not.
  const hasFailed = !isGood || tests.failed > 0;
  rows.push({ name: stage.name, result: hasFailed ? 'FAILED' : 'passed', seconds, ...tests });
  isStopped = hasFailed;
}

const total = (key) => rows.reduce((sum, row) => sum + row[key], 0);
const line = (name, result, seconds, tests) =>
  `${name.padEnd(10)}${result.padEnd(11)}${seconds.padStart(9)}${tests.padStart(9)}`;
console.log(`\n${line('stage', 'result', 'seconds', 'tests')}`);
for (const { name, result, seconds, passed, failed } of rows) {
  const hasRun = result !== 'not run';
  console.log(
    line(name, result, hasRun ? seconds.toFixed(1) : '', hasRun ? String(passed + failed) : ''),
  );
}
console.log(
  line('all', '', total('seconds').toFixed(1), String(total('passed') + total('failed'))),
);

const skipped = total('skipped');
console.log(
  `\n${total('passed')} passed, ${total('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`,
);
process.exitCode = total('failed') > 0 ? 1 : 0;
