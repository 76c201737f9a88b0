import { createHash } from 'node:crypto';
import { edgesOf } from '../walls/imports.ts';
import { readFiles } from '../walls/source-files.ts';

const IN_A_RUN = /^tests\/(?:quantity|core|published|worksheets|pictures|practice)\/.*\.test\.ts$/u;
/** All advice fed back to all sheets, and hostile texts in all fields: minutes. */
const TAKE_MINUTES = ['tests/worksheets/advice.test.ts', 'tests/worksheets/contract.test.ts'];
/** Runs programs beside. */
const RUN_PROGRAMS = ['tests/tools/ffmpeg.ts', 'node:child_process'];
const NOT_IN_A_RUN = [
  ...TAKE_MINUTES,
  ...RUN_PROGRAMS,
  // Counts what runs, which slows down everything after it.
  'tests/tools/reached-code.ts',
];
/** Steps of import up to which a test that is left out is near. */
const NEAR_STEPS = 3;

const files = [...readFiles('src', ['.ts', '.tsx']), ...readFiles('tests', ['.ts'])];
const textOf = new Map(files.map(({ path, text }) => [path, text]));
const imported = new Map<string, Set<string>>();
const importers = new Map<string, Set<string>>();
for (const { from, to, kind } of edgesOf(files)) {
  if (kind === 'type') continue;
  imported.set(from, (imported.get(from) ?? new Set()).add(to));
  importers.set(to, (importers.get(to) ?? new Set()).add(from));
}

function reached(
  from: string,
  edges: ReadonlyMap<string, ReadonlySet<string>>,
): ReadonlyMap<string, number> {
  const steps = new Map([[from, 0]]);
  for (const [path, count] of steps) {
    for (const next of edges.get(path) ?? []) if (!steps.has(next)) steps.set(next, count + 1);
  }
  return steps;
}

/** Test files that a mutation run uses. */
export const TEST_FILES: readonly string[] = files
  .map(({ path }) => path)
  .filter((path) => IN_A_RUN.test(path))
  .filter((path) => {
    const all = reached(path, imported);
    return !NOT_IN_A_RUN.some((each) => all.has(each));
  });

/**
 * Test files that a run leaves out because they run programs, and that reach a source file in few steps of
 * import, the nearest first.
 */
export function testFilesLeftOut(file: string): readonly string[] {
  return [...reached(file, importers)]
    .filter(([path, steps]) => IN_A_RUN.test(path) && steps <= NEAR_STEPS)
    .map(([path]) => path)
    .filter((path) => {
      const all = reached(path, imported);
      return !TAKE_MINUTES.includes(path) && RUN_PROGRAMS.some((each) => all.has(each));
    });
}

/** Import steps from a source file to each test file that reaches it. */
export function testFilesReaching(file: string): ReadonlyMap<string, number> {
  const all = reached(file, importers);
  return new Map(
    TEST_FILES.flatMap((path): [string, number][] => {
      const steps = all.get(path);
      return steps === undefined ? [] : [[path, steps]];
    }),
  );
}

/** Files that tests read as data. */
const data = [
  ...readFiles('content', ['']),
  ...readFiles('tests', ['.yaml', '.json', '.txt']).filter(
    ({ path }) => !path.startsWith('tests/mutation/') && !path.startsWith('tests/.output/'),
  ),
];

/** What in the text of a test tells that it reads a file: its name, or that of its folder. */
function namesOf(path: string): readonly string[] {
  const parts = path.split('/');
  return path.startsWith('content/')
    ? ['content']
    : parts.slice(-2).filter((part) => part !== 'tests');
}

/**
 * Changes whenever the test file, or anything of the tests or the content that it could read, changes. The
 * source may change: what a test reaches there is a matter of which tests are tried, not of the verdict.
 */
export function versionOf(testFile: string): string {
  const hash = createHash('sha256');
  const modules = [...reached(testFile, imported).keys()]
    .filter((path) => path.startsWith('tests/'))
    .sort();
  for (const path of modules) hash.update(path).update(textOf.get(path) ?? '');
  const tests = modules.map((path) => textOf.get(path)!);
  for (const { path, text } of data) {
    const [folder = '', name = ''] = namesOf(path);
    const isRead = tests.some(
      (test) => test.includes(name || folder) || test.includes(`/${folder}'`),
    );
    if (isRead) hash.update(path).update(text);
  }
  return hash.digest('hex');
}
