// The one test command (npm test): every check, up to the first stage that fails. Three stages run at any
// time, so that two cores are busy to the end. Ends with a table of the stages, what this machine lacks
// for some of them, and one plain line, "N passed, N failed".
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

/** Names of the stages to run; all of them where none is named. */
const chosen = process.argv.slice(2);
const isBuildRun = chosen.length === 0 || chosen.includes('build');

/**
 * In the order in which they are begun: whenever a hand is free, the first stage whose `after` have passed.
 * The long ones come first, so that the hands end together.
 */
const stages = [
  { name: 'build', npm: ['run', 'build'] },
  {
    name: 'folder',
    // Two builds at once would write into the same store of content.
    after: ['build'],
    command: [join(projectFolder, 'tests/tools/build-in-folder.mjs')],
  },
  {
    name: 'browser',
    after: ['build', 'folder'],
    command: [
      program('@playwright/test', 'playwright'),
      'test',
      '--config=tests/playwright.config.ts',
    ],
    // What is left out runs in npm run test:browser: tests/browser/short-run.ts.
    environment: { SHORT_RUN: '1' },
    report: join(output, 'playwright.json'),
    count: ({ stats }) => ({
      passed: stats.expected + stats.flaky,
      failed: stats.unexpected,
      skipped: stats.skipped,
    }),
  },
  vitest('unit', 'vitest.config.ts'),
  // Other engines than the one above, as far as the system has them.
  {
    ...vitest('others', 'vitest.engines.config.ts'),
    after: ['build'],
    // Pages take turns; npm run test:engines looks at all of them.
    environment: { SHORT_RUN: '1' },
  },
  // Compiles the TypeScript as well. The build has made the types of the content that this needs.
  { name: 'lint', after: ['folder'], npm: ['run', isBuildRun ? 'lint' : 'check:lint'] },
  // Of the .astro files. Writes into the store of content, as builds do.
  { name: 'types', after: ['folder'], npm: ['run', 'check:types'] },
  { name: 'format', npm: ['run', 'check:format'] },
  { ...vitest('site', 'vitest.site.config.ts'), after: ['build', 'folder'] },
  // Checks that no wrong result could disturb would prove nothing.
  { name: 'can-fail', command: [join(projectFolder, 'tests/tools/published-can-fail.mjs')] },
  // Measures times, so it comes when all else is done; npm run bench prints the rest.
  {
    name: 'bench',
    after: [],
    command: [join(projectFolder, 'tests/bench/run.mjs'), 'mutation', 'worksheet-recalculation'],
    onlyPrints: true,
  },
];
stages.at(-1).after = stages.slice(0, -1).map(({ name }) => name);

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

/** Processor seconds of all children that have ended, theirs included, where the system tells (Linux). */
function childrenSeconds() {
  try {
    const stat = readFileSync('/proc/self/stat', 'utf8');
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    // Fields 16 and 17 of proc(5), in hundredths of a second; the first one here is field 3.
    return (Number(fields[13]) + Number(fields[14])) / 100;
  } catch {
    return undefined;
  }
}
let countedSeconds = childrenSeconds() ?? 0;

/** What ended children have taken since the last time this was asked: asked as each child ends. */
function takeChildSeconds() {
  const all = childrenSeconds();
  if (all === undefined) return undefined;
  const since = all - countedSeconds;
  countedSeconds = all;
  return since;
}

/** Runs a stage; beside others its words are held back until it ends, so that they do not mix. */
function run(stage, isAlone) {
  const [file, args] = commandOf(stage);
  const said = [];
  let cpuSeconds;
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
      resolve({ isGood, cpuSeconds });
    };
    child.on('error', (error) => {
      said.push(Buffer.from(`${error.message}\n`));
      end(false);
    });
    child.on('exit', () => {
      cpuSeconds = takeChildSeconds();
    });
    child.on('close', (status) => {
      end(status === 0);
    });
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
  const { isGood, cpuSeconds } = await run(stage, isAlone);
  const times = { seconds: (performance.now() - start) / 1000, cpuSeconds };
  if (stage.onlyPrints === true) {
    return { name: stage.name, result: isGood ? 'printed' : 'broke off', ...times, ...NO_TESTS };
  }
  const tests = countTests(stage, isGood);
  // A report that tells of failures outranks an exit code that does not.
  const hasFailed = !isGood || tests.failed > 0;
  return { name: stage.name, result: hasFailed ? 'FAILED' : 'passed', ...times, ...tests };
}

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

/** Stages that run at the same time: one more than cores, since browsers wait a good part of their time. */
const HANDS = 3;
const toRun = stages.filter(isChosen);
const hasFailed = () => [...rows.values()].some(({ result }) => result === 'FAILED');

/** The first stage that nothing keeps waiting, taken off the list. */
function nextReady() {
  const isWaiting = (name) => isChosen({ name }) && !rows.has(name);
  const at = toRun.findIndex(({ after = [] }) => !after.some(isWaiting));
  return at < 0 ? undefined : toRun.splice(at, 1)[0];
}

/** Begins stages as long as a hand is free; after a failure those that run are ended and none is begun. */
async function runAll() {
  const running = new Set();
  const isAlone = toRun.length === 1;
  for (;;) {
    while (running.size < HANDS && !hasFailed()) {
      const stage = nextReady();
      if (stage === undefined) break;
      const work = rowOf(stage, isAlone).then((row) => {
        rows.set(stage.name, row);
        running.delete(work);
      });
      running.add(work);
    }
    if (running.size === 0) return;
    await Promise.race(running);
  }
}
await runAll();

const all = stages.map(
  ({ name }) =>
    rows.get(name) ?? { name, result: 'not run', seconds: 0, cpuSeconds: undefined, ...NO_TESTS },
);
const total = (key) => all.reduce((sum, row) => sum + row[key], 0);
const line = (name, result, ...cells) =>
  `${name.padEnd(10)}${result.padEnd(11)}${cells.map((cell) => cell.padStart(9)).join('')}`;
console.log(`\n${line('stage', 'result', 'seconds', 'CPU s', 'tests', 'skipped')}`);
const inTenths = (seconds) => seconds?.toFixed(1) ?? '–';
for (const { name, result, seconds, cpuSeconds, passed, failed, skipped } of all) {
  const times = [inTenths(seconds), inTenths(cpuSeconds)];
  const cells = [...times, String(passed + failed), String(skipped)];
  console.log(line(name, result, ...(result === 'not run' ? [] : cells)));
}
const elapsed = (performance.now() - begin) / 1000;
const skipped = total('skipped');
const tests = total('passed') + total('failed');
const busy = childrenSeconds();
console.log(line('all', '', inTenths(elapsed), inTenths(busy), String(tests), String(skipped)));
if (loudLines.size > 0) console.log(`\n${[...loudLines].join('\n')}`);
console.log(
  `\n${total('passed')} passed, ${total('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`,
);
process.exitCode = total('failed') > 0 ? 1 : 0;
