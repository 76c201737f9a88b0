// The one test command (npm test): every check, up to the first step in which one fails. Stages that
// do not need each other run side by side. Ends with a table of the stages, what this machine lacks for
// some of them, and one plain line, "N passed, N failed".
// Stage names after -- run only those: npm test -- unit site
import './guard-node.mjs';
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { stripVTControlCharacters } from 'node:util';

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

/** Steps run one after another, the lanes of a step side by side, the stages of a lane in order. */
const steps = [
  [
    [
      {
        name: 'format',
        command: [program('prettier'), '--check', '.', '--log-level', 'warn'],
      },
      {
        name: 'lint',
        command: [
          program('eslint'),
          '--config',
          'tests/eslint.config.js',
          '.',
          '--max-warnings',
          '0',
        ],
      },
      { name: 'types', command: [program('astro'), 'check'] },
      // Checks that no wrong result could disturb would prove nothing.
      {
        name: 'can-fail',
        command: [join(projectFolder, 'tests/tools/published-can-fail.mjs')],
      },
      // The built site needs no unit test, and what asks little of a second core runs beside them.
      { name: 'build', npm: ['run', 'build'] },
      { name: 'folder', command: [join(projectFolder, 'tests/tools/build-in-folder.mjs')] },
      vitest('site', 'vitest.site.config.ts'),
    ],
    [vitest('unit', 'vitest.config.ts')],
  ],
  [
    [
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
      // Other engines than the one above, as far as the system has them.
      vitest('others', 'vitest.engines.config.ts'),
      { name: 'bench', command: [join(projectFolder, 'tests/bench/run.mjs')], onlyPrints: true },
    ],
  ],
];
const stages = steps.flat(2);

const environmentOf = (stage) => ({
  ...process.env,
  // Child tools that start "node" themselves get the same one.
  PATH: [join(modules, '.bin'), process.env.PATH].join(delimiter),
  ASTRO_TELEMETRY_DISABLED: '1',
  ...stage.environment,
});

function commandOf({ command, npm }) {
  if (npm === undefined) return [process.execPath, command];
  const npmScript = process.env.npm_execpath;
  return npmScript === undefined ? ['npm', npm] : [process.execPath, [npmScript, ...npm]];
}

/** A line by which a stage says what it cannot test on this machine. */
const LOUD = /^!!! .+/gmu;
const loudLines = new Set();

const heading = (name) => `\n── ${name} ${'─'.repeat(60 - name.length)}`;

/** Runs a stage; beside others its words are held back until it ends, so that they do not mix. */
function run(stage, isAlone) {
  const [file, args] = commandOf(stage);
  const said = [];
  const isSeen = isAlone && process.stdout.isTTY;
  if (isAlone) console.log(heading(stage.name));
  return new Promise((resolve) => {
    const child = spawn(file, args, {
      cwd: projectFolder,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...environmentOf(stage), ...(isSeen ? { FORCE_COLOR: '1' } : {}) },
    });
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (chunk) => {
        said.push(chunk);
        if (isAlone) process.stdout.write(chunk);
      });
    }
    const end = (isGood) => {
      const words = Buffer.concat(said);
      if (!isAlone) {
        console.log(heading(stage.name));
        process.stdout.write(words);
      }
      for (const [line] of stripVTControlCharacters(words.toString()).matchAll(LOUD)) {
        loudLines.add(line);
      }
      resolve(isGood);
    };
    child.on('error', (error) => {
      said.push(Buffer.from(`${error.message}\n`));
      end(false);
    });
    child.on('close', (status) => end(status === 0));
  });
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

const NO_TESTS = { passed: 0, failed: 0, skipped: 0 };

/** Runs a stage and gives its row of the table. */
async function rowOf(stage, isAlone) {
  if (stage.report !== undefined) rmSync(stage.report, { force: true });
  const start = performance.now();
  const isGood = await run(stage, isAlone);
  const seconds = (performance.now() - start) / 1000;
  if (stage.onlyPrints === true) {
    return { name: stage.name, result: isGood ? 'printed' : 'broke off', seconds, ...NO_TESTS };
  }
  const tests = countTests(stage, isGood);
  // A report that tells of failures outranks an exit code that does not.
  const hasFailed = !isGood || tests.failed > 0;
  return { name: stage.name, result: hasFailed ? 'FAILED' : 'passed', seconds, ...tests };
}

const chosen = process.argv.slice(2);
const unknown = chosen.filter((name) => stages.every((stage) => stage.name !== name));
if (unknown.length > 0) {
  const known = stages.map(({ name }) => name).join(', ');
  console.error(`No stage ${unknown.join(', ')}. Known: ${known}`);
  process.exit(2);
}
const isChosen = ({ name }) => chosen.length === 0 || chosen.includes(name);

mkdirSync(output, { recursive: true });
const begin = performance.now();
const rows = new Map();

/** Runs a lane up to its first failure. */
async function runLane(lane, isAlone) {
  for (const stage of lane) {
    const row = await rowOf(stage, isAlone);
    rows.set(stage.name, row);
    if (row.result === 'FAILED') return;
  }
}

for (const step of steps) {
  const lanes = step.map((lane) => lane.filter(isChosen)).filter((lane) => lane.length > 0);
  await Promise.all(lanes.map((lane) => runLane(lane, lanes.length === 1)));
  if ([...rows.values()].some(({ result }) => result === 'FAILED')) break;
}

const all = stages.map(
  ({ name }) => rows.get(name) ?? { name, result: 'not run', seconds: 0, ...NO_TESTS },
);
const total = (key) => all.reduce((sum, row) => sum + row[key], 0);
const line = (name, result, seconds, tests, skipped) =>
  `${name.padEnd(10)}${result.padEnd(11)}${seconds.padStart(9)}${tests.padStart(9)}${skipped.padStart(9)}`;
console.log(`\n${line('stage', 'result', 'seconds', 'tests', 'skipped')}`);
for (const { name, result, seconds, passed, failed, skipped } of all) {
  const isRun = result !== 'not run';
  const counts = isRun ? [seconds.toFixed(1), passed + failed, skipped].map(String) : ['', '', ''];
  console.log(line(name, result, ...counts));
}
const elapsed = (performance.now() - begin) / 1000;
const skipped = total('skipped');
const tests = total('passed') + total('failed');
console.log(line('all', '', elapsed.toFixed(1), String(tests), String(skipped)));
if (loudLines.size > 0) console.log(`\n${[...loudLines].join('\n')}`);
console.log(
  `\n${total('passed')} passed, ${total('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`,
);
process.exitCode = total('failed') > 0 ? 1 : 0;
