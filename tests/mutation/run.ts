// The mutation run (npm run mutate): makes small changes to core and worksheets, one at a time, and asks
// whether the tests notice. Modules stay loaded; a change is put in their place and meets, nearest first,
// the tests that run the place where it stands, up to the first that fails. Tests that run other programs
// or take longer than three seconds are left out, so the whole test command notices at least as much. A
// test that fails counts only where it passes without the change, and a change that hangs is tried twice.
//   --sample 100   so many changes of each room, drawn by --seed (1); all of them with --full
//   --rooms core,worksheets
//   --only PATH,PATH   changes to files under these paths alone
//   --workers 1    changes tried side by side
//   --minutes 30    draws no more changes after this time and counts those tried: a smaller sample
//   --resume LOG    takes over what an interrupted run of the same sample printed; survivors are tried again
//                   unless --minutes is 0
//   --beside       what survives meets, by the test framework itself, the tests that run other programs
//   --confirm 10   so many killed ones are tried once more by the test framework itself
//   --keep         writes the outcome of these rooms to last-run.json, which npm run bench prints
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { projectFolder, readFiles } from '../walls/source-files.ts';
import { warmCompiler } from './compiler.ts';
import { isEquivalent } from './equivalents.ts';
import {
  LAST_RUN,
  NOTHING,
  partOf,
  readable,
  type Counts,
  type LastRun,
  type Outcome,
  type RoomRun,
} from './last-run.ts';
import { mutantsOf, mutated, sampleOf, type Mutant } from './mutants.ts';
import { planFor } from './plan.ts';
import { doTasks } from './pool.ts';
import { runByFramework } from './run-tests.ts';
import { survey } from './survey.ts';
import { testFilesLeftOut } from './test-files.ts';
import type { Task, Verdict } from './worker.ts';

const { values: options } = parseArgs({
  options: {
    sample: { type: 'string', default: '100' },
    seed: { type: 'string', default: '1' },
    rooms: { type: 'string', default: 'core,worksheets' },
    only: { type: 'string', default: 'src/' },
    workers: { type: 'string', default: '1' },
    minutes: { type: 'string', default: 'Infinity' },
    resume: { type: 'string' },
    confirm: { type: 'string', default: '0' },
    beside: { type: 'boolean', default: false },
    full: { type: 'boolean', default: false },
    keep: { type: 'boolean', default: false },
  },
});
const seed = Number(options.seed);
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();

const rooms = options.rooms.split(',').map((room) => {
  const sources = readFiles(`src/${room}`, ['.ts']);
  const all = sources
    .filter(({ path }) => options.only.split(',').some((only) => path.startsWith(only)))
    .flatMap(({ path, text }) => mutantsOf(path, text));
  const drawn = options.full ? all : sampleOf(all, Number(options.sample), seed);
  return { room, sources, changes: all.length, drawn };
});
const textOf = new Map(
  rooms.flatMap(({ sources }) => sources.map(({ path, text }) => [path, text] as const)),
);
const drawn = rooms.flatMap((each) => each.drawn);
console.log(
  rooms
    .map(({ room, drawn: { length }, changes }) => `${room}: ${length} of ${changes}`)
    .join(', '),
);

const surveyed = await survey(console.log);
const changed = (mutant: Mutant): string => mutated(textOf.get(mutant.file) ?? '', mutant);
const trapped = (mutant: Mutant): string =>
  mutated(textOf.get(mutant.file) ?? '', {
    ...mutant,
    to: "(() => { throw new Error('out of range'); })()",
  });
const outcomes = new Map<Mutant, Outcome>();
const killers = new Map<Mutant, string>();

const changeIn = ({ from, to }: Mutant): string =>
  `${from.replaceAll(/\s+/gu, ' ').slice(0, 60)} → ${to.slice(0, 40)}`;
const nameOf = (mutant: Mutant): string =>
  `${mutant.file}:${mutant.line} ${mutant.operator}: ${changeIn(mutant)}`;

const minutes = Number(options.minutes);

/** Outcomes that an interrupted run printed; a name that two changes share is tried again. */
function outcomesBefore(): ReadonlyMap<string, Outcome> {
  if (options.resume === undefined) return new Map();
  const names = drawn.map(nameOf);
  return new Map(
    readFileSync(options.resume, 'utf8')
      .split('\n')
      .flatMap((line): [string, Outcome][] => {
        const [, outcome, name] =
          /^\d+ (\w+) +(src\/.*?)(?: – tests\/.*| – a test .*|)$/u.exec(line) ?? [];
        if (outcome === undefined || name === undefined) return [];
        if (names.indexOf(name) !== names.lastIndexOf(name)) return [];
        return [[name, outcome as Outcome]];
      })
      .filter(([, outcome]) => outcome === 'killed' || minutes === 0),
  );
}
const before = outcomesBefore();
for (const mutant of drawn) {
  const known = isEquivalent(mutant) ? 'equivalent' : before.get(nameOf(mutant));
  if (known !== undefined) outcomes.set(mutant, known);
}

const start = performance.now();
function* tasks(): Generator<Task> {
  for (const [number, mutant] of drawn.entries()) {
    if (outcomes.has(mutant)) continue;
    if (performance.now() - start > minutes * 60_000) return;
    const { file, isFallback } = mutant;
    const trap = isFallback ? { trap: trapped(mutant) } : {};
    yield { number, file, text: changed(mutant), plan: planFor(mutant, surveyed), ...trap };
  }
}

let compiler: ReturnType<typeof warmCompiler> | undefined;
function settle({ number, outcome, by, error }: Verdict): void {
  const mutant = drawn[number]!;
  const { file } = mutant;
  if (outcome === 'survived') {
    compiler ??= warmCompiler([...textOf.keys()]);
    outcomes.set(mutant, compiler.refuses(file, changed(mutant)) ? 'refused' : 'survived');
  } else {
    outcomes.set(mutant, outcome);
    killers.set(mutant, by ?? '');
  }
  const noted = by === undefined ? '' : ` – ${by}: ${error ?? ''}`.slice(0, 160);
  console.log(`${outcomes.size} ${outcomes.get(mutant)!.padEnd(10)} ${nameOf(mutant)}${noted}`);
}
if (minutes > 0) await doTasks(tasks(), Number(options.workers), settle);
console.log(
  `${((performance.now() - start) / 60_000).toFixed(1)} min for ${outcomes.size} changes`,
);

const folder = join(projectFolder, 'tests/.output/mutation');
mkdirSync(folder, { recursive: true });

/** How a test file ends under the framework with a text in place of a source file. */
function endingOf(testFile: string, file: string, text: string): 'passed' | 'failed' {
  const path = join(folder, 'confirmed.ts');
  writeFileSync(path, text);
  return runByFramework(testFile, { file, text: path });
}

if (options.beside) {
  const passesUnchanged = new Map<string, boolean>();
  for (const mutant of drawn.filter((each) => outcomes.get(each) === 'survived')) {
    const { file } = mutant;
    const by = testFilesLeftOut(file).find((testFile) => {
      const known = passesUnchanged.get(testFile);
      const isFit = known ?? endingOf(testFile, file, textOf.get(file) ?? '') === 'passed';
      passesUnchanged.set(testFile, isFit);
      return isFit && endingOf(testFile, file, changed(mutant)) === 'failed';
    });
    if (by === undefined) continue;
    outcomes.set(mutant, 'killed');
    console.log(`killed beside ${nameOf(mutant)} – ${by}`);
  }
}

function countsOf(mutants: readonly Mutant[]): Counts {
  const counts: Record<Outcome, number> = { ...NOTHING };
  for (const mutant of mutants) {
    const outcome = outcomes.get(mutant);
    if (outcome !== undefined) counts[outcome] += 1;
  }
  return counts;
}

/** Those drawn up to the first that was not tried: a sample as random as the whole. */
function triedOf(mutants: readonly Mutant[]): readonly Mutant[] {
  const end = mutants.findIndex((mutant) => !outcomes.has(mutant));
  return end < 0 ? mutants : mutants.slice(0, end);
}

function roomRun({ changes, drawn: all }: (typeof rooms)[number]): RoomRun {
  const mutants = triedOf(all);
  const parts = [...new Set(mutants.map(({ file }) => partOf(file)))].sort();
  const of = (part: string): readonly Mutant[] =>
    mutants.filter(({ file }) => partOf(file) === part);
  return {
    date: new Date().toISOString().slice(0, 10),
    commit,
    seed: options.full ? undefined : seed,
    changes,
    counts: countsOf(mutants),
    parts: Object.fromEntries(parts.map((part) => [part, countsOf(of(part))])),
    survivors: mutants
      .filter((mutant) => outcomes.get(mutant) === 'survived')
      .map(({ file, line, operator, at, from, to }) => ({
        place: `${file}:${line}`,
        operator,
        at,
        from,
        to,
      })),
  };
}
const run: LastRun = Object.fromEntries(rooms.map((each) => [each.room, roomRun(each)]));
console.log(`\n${readable(run)}`);
if (options.keep) {
  const kept = existsSync(LAST_RUN)
    ? (JSON.parse(readFileSync(LAST_RUN, 'utf8')) as LastRun)
    : undefined;
  writeFileSync(LAST_RUN, `${JSON.stringify({ ...kept, ...run }, undefined, 2)}\n`);
}

// The framework itself must notice what this run counts as killed.
for (const [mutant, by] of sampleOf([...killers], Number(options.confirm), seed)) {
  const testFile = by.split(' > ')[0]!;
  if (!testFile.startsWith('tests/')) continue;
  const ending = endingOf(testFile, mutant.file, changed(mutant));
  console.log(`${mutant.file}:${mutant.line}, ${testFile}: ${ending}`);
  if (ending !== 'failed') process.exitCode = 1;
}
process.exit();
