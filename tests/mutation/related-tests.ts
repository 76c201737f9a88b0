import { edgesOf } from '../walls/imports.ts';
import { readFiles } from '../walls/source-files.ts';

/** Tests to run one after another until one fails, those that are closest to a file first. */
export interface Round {
  readonly tests: readonly string[];
  /** Only tests with this in their titles. */
  readonly titles?: string;
}

const TESTS = /^tests\/(?:quantity|core|published|worksheets|content|pictures|ui)\/.*\.test\.ts$/u;
const SHEET = /^src\/worksheets\/(?:reel|gate|file|customer)\/([^/]+)\//u;

const FEW_STEPS = 2;
const BY_NAME = ['tests/worksheets/examples.test.ts', 'tests/worksheets/contract.test.ts'];

const files = [...readFiles('src', ['.ts', '.tsx']), ...readFiles('tests', ['.ts'])];
const importers = new Map<string, Set<string>>();
for (const { from, to, kind } of edgesOf(files)) {
  if (kind === 'type') continue;
  importers.set(to, (importers.get(to) ?? new Set()).add(from));
}

/** Everything that reaches a file by its imports, with the number of steps. */
function reachedFrom(file: string): ReadonlyMap<string, number> {
  const steps = new Map([[file, 0]]);
  for (const [path, count] of steps) {
    for (const importer of importers.get(path) ?? []) {
      if (!steps.has(importer)) steps.set(importer, count + 1);
    }
  }
  return steps;
}

/**
 * The rounds of tests that could notice a change to a file: tests of the file itself; then whatever is
 * said of the worksheets that use it, by their names; then, if asked for, all others that reach it.
 */
export function roundsFor(file: string, isThorough: boolean): readonly Round[] {
  const reached = reachedFrom(file);
  const all = [...reached.keys()].filter((path) => TESTS.test(path));
  const own = SHEET.exec(file)?.[1];
  // Sheets that use it themselves; by what they share nearly all of them would.
  const sheets = [...reached].flatMap(([path, count]) =>
    count <= FEW_STEPS ? (SHEET.exec(path)?.[1] ?? []) : [],
  );
  const names = own === undefined ? [...new Set(sheets)] : [own];
  const near = all.filter((path) => reached.get(path) === 1);
  // By the registry these reach every sheet, and say its name in their titles.
  const byName = BY_NAME.filter((path) => all.includes(path));
  const examples = file.startsWith('src/core/') ? ['tests/core/docstring-examples.test.ts'] : [];
  const first = [...new Set([...near, ...examples])];
  return [
    ...(first.length > 0 ? [{ tests: first }] : []),
    ...(names.length > 0 && byName.length > 0
      ? [{ tests: byName, titles: `(${names.join('|')})` }]
      : []),
    ...(isThorough ? [{ tests: all.filter((path) => !first.includes(path)) }] : []),
  ].filter(({ tests }) => tests.length > 0);
}
