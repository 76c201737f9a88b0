// Stands for the test framework inside a mutation run: collects the tests of a file instead of running
// them, so that the run can pick those that can see a change and stop at the first that fails.
// `expect` and `vi` are the framework's own.
import { expect, vi } from 'vitest';

export { expect, vi };

type Body = (...given: readonly never[]) => unknown;

interface Suite {
  readonly parent: Suite | undefined;
  readonly title: string;
  readonly isSkipped: boolean;
  readonly beforeAll: (() => unknown)[];
  readonly afterAll: (() => unknown)[];
  readonly beforeEach: (() => unknown)[];
  readonly afterEach: (() => unknown)[];
  isStarted: boolean;
}

/** A test as it was collected. */
export interface CollectedTest {
  readonly title: string;
  /** Runs it with the hooks round it; throws what the test throws. */
  run(): Promise<void>;
}

/** What a file holds. */
export interface CollectedFile {
  readonly tests: readonly CollectedTest[];
  /** Runs what has to be done after the tests. */
  end(): Promise<void>;
}

const suiteIn = (parent: Suite | undefined, title: string, isSkipped: boolean): Suite => ({
  parent,
  title,
  isSkipped: isSkipped || parent?.isSkipped === true,
  beforeAll: [],
  afterAll: [],
  beforeEach: [],
  afterEach: [],
  isStarted: false,
});

let current = suiteIn(undefined, '', false);
let tests: CollectedTest[] = [];
let suites: Suite[] = [current];

function pathOf(suite: Suite): readonly Suite[] {
  return suite.parent === undefined ? [suite] : [...pathOf(suite.parent), suite];
}

async function runAll(hooks: readonly (() => unknown)[]): Promise<void> {
  for (const hook of hooks) await hook();
}

function addTest(title: string, body: () => unknown, isSkipped: boolean): void {
  const suite = current;
  if (isSkipped || suite.isSkipped) return;
  const path = pathOf(suite);
  tests.push({
    title: [...path.map((each) => each.title), title].filter(Boolean).join(' > '),
    async run() {
      for (const each of path) {
        if (each.isStarted) continue;
        each.isStarted = true;
        await runAll(each.beforeAll);
      }
      await runAll(path.flatMap((each) => each.beforeEach));
      try {
        await body();
      } finally {
        await runAll(path.toReversed().flatMap((each) => each.afterEach));
      }
    },
  });
}

function addSuite(title: string, body: () => unknown, isSkipped: boolean): void {
  const outer = current;
  current = suiteIn(outer, title, isSkipped);
  suites.push(current);
  body();
  current = outer;
}

type Add = (title: string, body: () => unknown, isSkipped: boolean) => void;
type Declare = (title: string, ...rest: readonly unknown[]) => void;

/** The body among the arguments after the title: options or a time limit may stand beside it. */
function bodyIn(rest: readonly unknown[]): Body {
  return rest.find((each) => typeof each === 'function') as Body;
}

/** A title with the values of its case put in, as far as they are short. */
function titled(title: string, row: readonly unknown[], index: number): string {
  const [first] = row;
  const named = title.replaceAll(/\$(\w+)/gu, (whole, key: string) => {
    const value: unknown = (first as Readonly<Record<string, unknown>> | null | undefined)?.[key];
    return typeof value === 'string' || typeof value === 'number' ? String(value) : whole;
  });
  const values = row.filter((each) => typeof each === 'string' || typeof each === 'number');
  let next = 0;
  const filled = named.replaceAll(/%[sdo]/gu, (whole) => String(values[next++] ?? whole));
  return `${filled.slice(0, 200)} [${index}]`;
}

/** `it` or `describe` with what hangs on them. */
function declaring(add: Add) {
  const one =
    (isSkipped: boolean): Declare =>
    (title, ...rest) => {
      const body = bodyIn(rest);
      add(String(title), () => (body as () => unknown)(), isSkipped);
    };
  const each =
    (isSkipped: boolean) =>
    (cases: readonly unknown[]): Declare =>
    (title, ...rest) => {
      const body = bodyIn(rest) as (...given: readonly unknown[]) => unknown;
      cases.forEach((given, index) => {
        const row = Array.isArray(given) ? (given as readonly unknown[]) : [given];
        add(titled(String(title), row, index), () => body(...row), isSkipped);
      });
    };
  const skipping = (isSkipped: boolean) =>
    Object.assign(one(isSkipped), { each: each(isSkipped), for: each(isSkipped) });
  return Object.assign(skipping(false), {
    skip: skipping(true),
    skipIf: (condition: unknown) => skipping(Boolean(condition)),
    runIf: (condition: unknown) => skipping(!condition),
  });
}

export const it = declaring(addTest);
export const test = it;
export const describe = declaring(addSuite);

export const beforeAll = (hook: () => unknown): void => void current.beforeAll.push(hook);
export const afterAll = (hook: () => unknown): void => void current.afterAll.push(hook);
export const beforeEach = (hook: () => unknown): void => void current.beforeEach.push(hook);
export const afterEach = (hook: () => unknown): void => void current.afterEach.push(hook);

/** The tests that `load` declares; throws what loading throws. */
export async function collect(load: () => Promise<unknown>): Promise<CollectedFile> {
  current = suiteIn(undefined, '', false);
  tests = [];
  suites = [current];
  await load();
  const [collected, all] = [tests, suites];
  return {
    tests: collected,
    end: () => runAll(all.filter(({ isStarted }) => isStarted).flatMap((suite) => suite.afterAll)),
  };
}
