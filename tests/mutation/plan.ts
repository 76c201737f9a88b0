import type { Mutant } from './mutants.ts';
import { probeAt } from './probes.ts';
import { LONGEST_TEST_MILLISECONDS, probesIn, type Survey, type SurveyedTest } from './survey.ts';
import { testFilesReaching } from './test-files.ts';

/** Tests of one file to run on a mutant. */
export interface Planned {
  readonly testFile: string;
  /** Number of tests that the file declares. */
  readonly of: number;
  readonly tests: readonly { readonly index: number; readonly title: string }[];
}

/** Time of all the tests that one mutant may meet. */
export const LONGEST_PLAN_MILLISECONDS = 9000;
const MOST_TESTS_OF_A_FILE = 150;

const TEXTS = /(?:approved-\w+|input-fields)\.test\.ts$/u;

/** The part of a path that names a sheet or a topic: `flash-match`, `ripple`. */
function topicOf(file: string): string {
  const sheet = /^src\/worksheets\/(?:reel|gate|file|customer)\/([^/]+)\//u.exec(file)?.[1];
  return sheet ?? file.replace(/^.*\/|\.ts$/gu, '');
}

function evenly<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from({ length: most }, (_, at) => items[Math.floor((at * items.length) / most)]!);
}

const loadedProbes = new WeakMap<Survey, ReadonlySet<number>>();

/** Probes that ran as some file was loaded: what they stand in counts for all that import it. */
function probesAtLoading(survey: Survey): ReadonlySet<number> {
  const known = loadedProbes.get(survey);
  if (known !== undefined) return known;
  const found = new Set([...survey.values()].flatMap(({ probes }) => probes));
  loadedProbes.set(survey, found);
  return found;
}

/**
 * The tests that could see a mutant: those that ran the place it stands in; for one that counts as its file
 * is loaded, those that ran any place of the file or say its name. Few steps of import first, short first.
 */
export function planFor(mutant: Mutant, survey: Survey): readonly Planned[] {
  const { first, probes } = probesIn(mutant.file);
  const own = probeAt(probes, mutant.start);
  const isLoaded = own === undefined || probesAtLoading(survey).has(first + own);
  const probe = isLoaded ? undefined : own;
  const topic = topicOf(mutant.file);
  const inFile = (number: number): boolean => number >= first && number < first + probes.length;
  const sees = (test: SurveyedTest, steps: number): boolean => {
    if (probe !== undefined) return test.probes.includes(first + probe);
    if (own !== undefined && test.probes.includes(first + own)) return true;
    return (
      steps <= 2 || probes.length === 0 || test.title.includes(topic) || test.probes.some(inFile)
    );
  };
  const plans = [...testFilesReaching(mutant.file)].flatMap(([testFile, steps]) => {
    const surveyed = survey.get(testFile);
    if (surveyed === undefined) return [];
    const chosen = surveyed.tests
      .map((test, index) => ({ ...test, index }))
      .filter((test) => test.isUsed && test.milliseconds <= LONGEST_TEST_MILLISECONDS)
      .filter((test) => sees(test, steps));
    if (chosen.length === 0) return [];
    const isNear = ({ title, probes: ran }: SurveyedTest): boolean =>
      title.includes(topic) || ran.some(inFile);
    const named = chosen.filter(isNear);
    const others = chosen.filter((test) => !isNear(test));
    const tests = [...evenly(named, MOST_TESTS_OF_A_FILE), ...evenly(others, MOST_TESTS_OF_A_FILE)];
    const mean = tests.reduce((sum, test) => sum + test.milliseconds, 0) / tests.length;
    const rank = steps <= 1 ? 0 : TEXTS.test(testFile) ? 1 : 2;
    return [{ testFile, of: surveyed.tests.length, tests, rank, mean }];
  });
  let left = LONGEST_PLAN_MILLISECONDS;
  return plans
    .toSorted((a, b) => a.rank - b.rank || a.mean - b.mean)
    .flatMap(({ testFile, of, tests }) => {
      const affordable = tests.filter(({ milliseconds }) => {
        if (milliseconds > left) return false;
        left -= milliseconds;
        return true;
      });
      if (affordable.length === 0) return [];
      return [{ testFile, of, tests: affordable.map(({ index, title }) => ({ index, title })) }];
    });
}
