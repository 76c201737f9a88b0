// What each test takes and which places of the source it runs, found once without any change.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder, readFiles } from '../walls/source-files.ts';
import { collect } from './collected-tests.ts';
import { HIT, probesOf, withProbes, type Probe } from './probes.ts';
import { TEST_FILES, versionOf } from './test-files.ts';
import { warmModules } from './warm-modules.ts';

/** A test that takes longer is not used: with the slowest ones a run would take days. */
export const LONGEST_TEST_MILLISECONDS = 3000;

/** What one test takes and touches. */
export interface SurveyedTest {
  readonly title: string;
  readonly milliseconds: number;
  /** Numbers of the probes that it runs. */
  readonly probes: readonly number[];
  /** False where it does not pass outside the framework: it is not used. */
  readonly isUsed: boolean;
}

/** What one test file takes and touches. */
export interface SurveyedFile {
  readonly version: string;
  /** What the numbers of probes counted when it was looked at. */
  readonly layout: Layout;
  /** Probes that run as its tests are declared. */
  readonly probes: readonly number[];
  readonly tests: readonly SurveyedTest[];
}

export type Survey = ReadonlyMap<string, SurveyedFile>;

const sources = [...readFiles('src/core', ['.ts']), ...readFiles('src/worksheets', ['.ts'])];
const firstProbe = new Map<string, number>();
const probesByFile = new Map<string, readonly Probe[]>();
let probeCount = 0;
for (const { path, text } of sources) {
  const probes = probesOf(text);
  firstProbe.set(path, probeCount);
  probesByFile.set(path, probes);
  probeCount += probes.length;
}

/** The probes of a source file and the number of its first. */
export function probesIn(path: string): {
  readonly first: number;
  readonly probes: readonly Probe[];
} {
  return { first: firstProbe.get(path) ?? 0, probes: probesByFile.get(path) ?? [] };
}

/** Number of probes in each source file, in their order. */
type Layout = readonly (readonly [path: string, count: number])[];
const layout: Layout = [...probesByFile].map(([path, probes]) => [path, probes.length]);

/** The numbers that probes have now; all those of a file whose places are no longer the same. */
function renumbering(before: Layout): (probes: readonly number[]) => readonly number[] {
  if (JSON.stringify(before) === JSON.stringify(layout)) return (probes) => probes;
  const numbers: (readonly number[])[] = [];
  for (const [path, count] of before) {
    const { first, probes } = probesIn(path);
    const all = probes.map((_, index) => first + index);
    for (let index = 0; index < count; index += 1) {
      numbers.push(count === all.length ? [all[index]!] : all);
    }
  }
  return (probes) => [...new Set(probes.flatMap((probe) => numbers[probe] ?? []))];
}

const folder = join(projectFolder, 'tests/.output/mutation/survey');
const keptAt = (testFile: string): string => join(folder, `${testFile.replaceAll('/', '~')}.json`);

function kept(testFile: string): SurveyedFile | undefined {
  try {
    const found = JSON.parse(readFileSync(keptAt(testFile), 'utf8')) as SurveyedFile;
    if (found.version !== versionOf(testFile)) return undefined;
    const renumbered = renumbering(found.layout);
    return {
      ...found,
      probes: renumbered(found.probes),
      tests: found.tests.map((test) => ({ ...test, probes: renumbered(test.probes) })),
    };
  } catch {
    return undefined;
  }
}

/** Tests of one wording that took so long that a mutation run uses none of them; others need not run. */
class SlowFamilies {
  readonly #milliseconds = new Map<string, number>();
  #family(title: string): string {
    return title.replace(/^.* > /u, '').replaceAll(/ \[\d+\]|\d+/gu, '');
  }
  has(title: string): boolean {
    return (this.#milliseconds.get(this.#family(title)) ?? 0) > 2 * LONGEST_TEST_MILLISECONDS;
  }
  add(title: string, milliseconds: number): void {
    if (milliseconds < LONGEST_TEST_MILLISECONDS / 4) return;
    const family = this.#family(title);
    this.#milliseconds.set(family, (this.#milliseconds.get(family) ?? 0) + milliseconds);
  }
}

/** What this program has computed for so far: on a busy machine a clock says more. */
function cpuMilliseconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Looks at the test files that were not looked at since they changed, and keeps what it finds. */
export async function survey(say: (line: string) => void): Promise<Survey> {
  mkdirSync(folder, { recursive: true });
  const found = new Map<string, SurveyedFile>();
  const missing: string[] = [];
  for (const testFile of TEST_FILES) {
    const known = kept(testFile);
    if (known === undefined) missing.push(testFile);
    else found.set(testFile, known);
  }
  if (missing.length === 0) return found;
  const hits = new Uint8Array(probeCount);
  Object.assign(globalThis, {
    [HIT]: (probe: number) => {
      hits[probe] = 1;
    },
  });
  const takeHits = (): readonly number[] => {
    const taken: number[] = [];
    hits.forEach((hit, probe) => {
      if (hit === 1) taken.push(probe);
    });
    hits.fill(0);
    return taken;
  };
  const modules = await warmModules((path, text) => {
    const first = firstProbe.get(path);
    return first === undefined ? text : withProbes(text, first);
  });
  for (const [index, testFile] of missing.entries()) {
    const start = performance.now();
    takeHits();
    const tests: SurveyedTest[] = [];
    let probes: readonly number[] = [];
    try {
      const file = await collect(() => modules.load(testFile));
      probes = takeHits();
      const slow = new SlowFamilies();
      for (const test of file.tests) {
        if (slow.has(test.title)) {
          tests.push({ title: test.title, milliseconds: 0, probes: [], isUsed: false });
          continue;
        }
        const began = cpuMilliseconds();
        const isUsed = await test.run().then(
          () => true,
          () => false,
        );
        const milliseconds = cpuMilliseconds() - began;
        slow.add(test.title, milliseconds);
        tests.push({ title: test.title, milliseconds, probes: takeHits(), isUsed });
      }
      await file.end();
    } catch (error) {
      say(`${testFile} cannot be loaded outside the test framework: ${String(error)}`);
    }
    const surveyed = { version: versionOf(testFile), layout, probes, tests };
    found.set(testFile, surveyed);
    writeFileSync(keptAt(testFile), JSON.stringify(surveyed));
    const failed = tests.filter(({ isUsed }) => !isUsed).length;
    say(
      `survey ${index + 1} of ${missing.length}: ${testFile}, ${tests.length} tests` +
        `${failed === 0 ? '' : `, ${failed} not used`}, ${((performance.now() - start) / 1000).toFixed(1)} s`,
    );
  }
  await modules.close();
  return found;
}
