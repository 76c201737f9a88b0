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

/** Runs the planned tests of a file; gives the first that fails. */
async function tryOn(planned: Planned): Promise<Pick<Verdict, 'by' | 'error'> | undefined> {
  let file: CollectedFile;
  try {
    file = await collect(() => modules.load(planned.testFile));
  } catch (error) {
    return { by: planned.testFile, error: firstLine(error) };
  }
  // Where the change alters which tests there are, numbers mean nothing: titles are looked up.
  const byNumber = file.tests.length === planned.of;
  const titles = new Set(planned.tests.map(({ title }) => title));
  const tests = byNumber
    ? planned.tests.map(({ index }) => file.tests[index]!)
    : file.tests.filter(({ title }) => titles.has(title));
  try {
    for (const test of tests) {
      port!.postMessage('alive');
      try {
        await test.run();
      } catch (error) {
        return { by: `${planned.testFile} > ${test.title}`, error: firstLine(error) };
      }
    }
  } finally {
    await file.end().catch(() => undefined);
  }
  return undefined;
}

/** The first test that fails with a text in place of the file. */
async function failureWith(
  text: string,
  { file, plan }: Task,
): Promise<Pick<Verdict, 'by' | 'error'> | undefined> {
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

async function verdictOn(task: Task): Promise<Verdict> {
  const { number, text, trap } = task;
  if (trap !== undefined && (await failureWith(trap, task)) === undefined) {
    return { number, outcome: 'unreached' };
  }
  const failed = await failureWith(text, task);
  return failed === undefined
    ? { number, outcome: 'survived' }
    : { number, outcome: 'killed', ...failed };
}

port.on('message', (task: Task) => {
  void verdictOn(task).then((verdict) => port.postMessage(verdict));
});
port.postMessage('ready');
