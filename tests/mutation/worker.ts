// Tries mutants, one at a time, in a thread of its own: what hangs or eats all memory ends with it.
import { parentPort } from 'node:worker_threads';
import { collect, type CollectedFile } from './collected-tests.ts';
import type { Planned } from './plan.ts';
import { warmModules } from './warm-modules.ts';

/** A mutant to try: the file, its changed text and the tests that could see it, most likely ones first. */
export interface Task {
  readonly number: number;
  readonly file: string;
  readonly text: string;
  readonly plan: readonly Planned[];
  /** The file with a fault in place of the change: where no test meets it, none could meet the change. */
  readonly trap?: string;
}

/** What became of it. */
export interface Verdict {
  readonly number: number;
  readonly outcome: 'killed' | 'survived' | 'unreached';
  /** The test that failed. */
  readonly by?: string;
  readonly error?: string;
}

const port = parentPort;
if (port === null) throw new Error('runs as a worker of run.ts');
const modules = await warmModules();
const firstLine = (error: unknown): string => String(error).split('\n')[0]!.slice(0, 200);

/** A test, or a whole file that cannot be loaded, that a change made fail. */
interface Failure {
  readonly testFile: string;
  /** Left out where the file could not be loaded. */
  readonly title?: string;
  readonly error: string;
}

const nameOf = ({ testFile, title }: Omit<Failure, 'error'>): string =>
  title === undefined ? testFile : `${testFile} > ${title}`;

/** Tests that failed under a change and pass without one. */
const fit = new Set<string>();
/** Tests that fail without any change too, out of order or on a busy machine: they notice nothing. */
const unfit = new Set<string>();

/** Runs the planned tests of a file; gives the first that fails. */
async function tryOn(planned: Planned): Promise<Failure | undefined> {
  const { testFile } = planned;
  let file: CollectedFile;
  try {
    file = await collect(() => modules.load(testFile));
  } catch (error) {
    return unfit.has(testFile) ? undefined : { testFile, error: firstLine(error) };
  }
  // Where the change alters which tests there are, numbers mean nothing: titles are looked up.
  const byNumber = file.tests.length === planned.of;
  const titles = new Set(planned.tests.map(({ title }) => title));
  const tests = byNumber
    ? planned.tests.map(({ index }) => file.tests[index]!)
    : file.tests.filter(({ title }) => titles.has(title));
  try {
    for (const test of tests) {
      const { title } = test;
      if (unfit.has(nameOf({ testFile, title }))) continue;
      port!.postMessage('alive');
      try {
        await test.run();
      } catch (error) {
        return { testFile, title, error: firstLine(error) };
      }
    }
  } finally {
    await file.end().catch(() => undefined);
  }
  return undefined;
}

/** The first test that fails with a text in place of the file. */
async function failureWith(text: string, { file, plan }: Task): Promise<Failure | undefined> {
  try {
    await modules.replace(file, text);
    for (const planned of plan) {
      const failed = await tryOn(planned);
      if (failed !== undefined) return failed;
    }
    return undefined;
  } finally {
    modules.restore(file);
  }
}

/** Whether a test passes without the change: asked once of each. */
async function passesUnchanged(failure: Failure): Promise<boolean> {
  const name = nameOf(failure);
  if (fit.has(name)) return true;
  port!.postMessage('alive');
  try {
    const file = await collect(() => modules.load(failure.testFile));
    const test = file.tests.find(({ title }) => title === failure.title);
    try {
      await test?.run();
    } finally {
      await file.end().catch(() => undefined);
    }
    // A test that is there with the change alone was made by it.
    fit.add(name);
    return true;
  } catch {
    unfit.add(name);
    return false;
  }
}

async function verdictOn(task: Task): Promise<Verdict> {
  const { number, text, trap } = task;
  if (trap !== undefined && (await failureWith(trap, task)) === undefined) {
    return { number, outcome: 'unreached' };
  }
  for (;;) {
    const failed = await failureWith(text, task);
    if (failed === undefined) return { number, outcome: 'survived' };
    if (await passesUnchanged(failed)) {
      return { number, outcome: 'killed', by: nameOf(failed), error: failed.error };
    }
  }
}

port.on('message', (task: Task) => {
  void verdictOn(task).then((verdict) => port.postMessage(verdict));
});
port.postMessage('ready');
