// The mutation run (npm run mutate): makes small changes to core and worksheets, one at a time, and asks
// whether the tests notice.
//   --sample 200   so many changes, drawn by --seed (1); all of them with --full
//   --only PATH    changes to files under this path alone
//   --quick        only tests near the changed file; else those that survive meet all that reach it
//   --workers 1    changes tried side by side
//   --keep         writes the outcome to last-run.json, which npm run bench prints
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { projectFolder, readFiles } from '../walls/source-files.ts';
import { isEquivalent } from './equivalents.ts';
import { LAST_RUN, readable, roomOf, type LastRun, type Outcome } from './last-run.ts';
import { mutantsOf, mutated, sampleOf, type Mutant } from './mutants.ts';
import { roundsFor, type Round } from './related-tests.ts';
import { runRound } from './run-tests.ts';

const { values: options } = parseArgs({
  options: {
    sample: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string', default: 'src/' },
    workers: { type: 'string', default: '1' },
    full: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
    keep: { type: 'boolean', default: false },
  },
});

const sources = new Map(
  [...readFiles('src/core', ['.ts']), ...readFiles('src/worksheets', ['.ts'])].map((source) => [
    source.path,
    source.text,
  ]),
);
const all = [...sources].flatMap(([file, text]) =>
  file.startsWith(options.only) ? mutantsOf(file, text) : [],
);
const seed = Number(options.seed);
const chosen = options.full ? all : sampleOf(all, Number(options.sample), seed);
console.log(`${chosen.length} of ${all.length} changes, seed ${seed}`);

const folder = join(projectFolder, 'tests/.output/mutation');
mkdirSync(folder, { recursive: true });

/** Seconds that a round takes without a change; a round that fails then proves nothing. */
const cleanSeconds = new Map<string, Promise<number>>();

async function timeClean(round: Round): Promise<number> {
  const start = performance.now();
  const ending = await runRound(round, 1200);
  if (ending !== 'passed') {
    throw new Error(`these tests do not pass without a change: ${round.tests.join(' ')}`);
  }
  return (performance.now() - start) / 1000;
}

function secondsOf(round: Round): Promise<number> {
  const key = JSON.stringify(round);
  const known = cleanSeconds.get(key) ?? timeClean(round);
  cleanSeconds.set(key, known);
  return known;
}

async function outcomeOf(mutant: Mutant, worker: number): Promise<Outcome> {
  if (isEquivalent(mutant)) return 'equivalent';
  const text = join(folder, `mutant-${worker}.ts`);
  writeFileSync(text, mutated(sources.get(mutant.file) ?? '', mutant));
  for (const round of roundsFor(mutant.file, !options.quick)) {
    // A change may make a loop endless; a busy machine may only be slow.
    const longest = (await secondsOf(round)) * 5 + 30;
    const ending = await runRound(round, longest, { file: mutant.file, text });
    if (ending !== 'passed') return 'killed';
  }
  return 'survived';
}

/** A source that cannot even be loaded must be noticed, or the run would prove nothing. */
async function proveThatFaultsAreSeen(): Promise<void> {
  const [file] = sources.keys();
  const [round] = file === undefined ? [] : roundsFor(file, false);
  if (file === undefined || round === undefined) throw new Error('nothing to change');
  const text = join(folder, 'planted.ts');
  writeFileSync(text, "throw new Error('planted');\n");
  if ((await runRound(round, 600, { file, text })) !== 'failed') {
    throw new Error(`a fault planted in ${file} is not seen by ${round.tests.join(' ')}`);
  }
}
await proveThatFaultsAreSeen();

const outcomes = new Map<Mutant, Outcome>();
const queue = [...chosen];
await Promise.all(
  Array.from({ length: Number(options.workers) }, async (_, worker) => {
    for (let mutant = queue.shift(); mutant !== undefined; mutant = queue.shift()) {
      const outcome = await outcomeOf(mutant, worker);
      outcomes.set(mutant, outcome);
      const { file, line, operator, from, to } = mutant;
      const change = `${from.replaceAll(/\s+/gu, ' ').slice(0, 60)} → ${to.slice(0, 40)}`;
      console.log(`${outcomes.size} ${outcome.padEnd(10)} ${file}:${line} ${operator}: ${change}`);
    }
  }),
);

const rooms: LastRun['rooms'] = {};
for (const [{ file }, outcome] of outcomes) {
  const room = (rooms[roomOf(file)] ??= { killed: 0, survived: 0, equivalent: 0 });
  room[outcome] += 1;
}
const run: LastRun = {
  date: new Date().toISOString().slice(0, 10),
  commit: execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim(),
  changes: chosen.length,
  of: all.length,
  seed: options.full ? undefined : seed,
  tests: options.quick ? 'near' : 'all',
  rooms: Object.fromEntries(Object.entries(rooms).sort(([a], [b]) => a.localeCompare(b))),
  survivors: [...outcomes]
    .filter(([, outcome]) => outcome === 'survived')
    .map(([{ file, line, at, from, to }]) => ({ place: `${file}:${line}`, at, from, to })),
};
console.log(`\n${readable(run)}`);
if (options.keep) writeFileSync(LAST_RUN, `${JSON.stringify(run, undefined, 2)}\n`);
