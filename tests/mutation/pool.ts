import { Worker } from 'node:worker_threads';
import type { Task, Verdict } from './worker.ts';

/** A test of a plan takes three seconds at most; a thread silent for longer hangs. */
const SILENT_CPU_SECONDS = 12;
const LOOK_EVERY_MILLISECONDS = 2000;
const MEMORY_MEGABYTES = 2500;

interface Thread {
  readonly worker: Worker;
  cpuSeconds(): Promise<number>;
}

function startThread(): Promise<Thread> {
  const worker = new Worker(new URL('worker.ts', import.meta.url), {
    workerData: {},
    resourceLimits: { maxOldGenerationSizeMb: MEMORY_MEGABYTES },
    // What the tests print is not for this run.
    stdout: true,
    stderr: true,
  });
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', () => {
      worker.removeAllListeners('error');
      resolve({
        worker,
        async cpuSeconds() {
          const { user, system } = await worker.cpuUsage();
          return (user + system) / 1e6;
        },
      });
    });
  });
}

/** Has one task done; a thread that hangs or dies has noticed the change in its way. */
function doTask({ worker, cpuSeconds }: Thread, task: Task): Promise<Verdict & { dead?: true }> {
  return new Promise((resolve) => {
    let isAlive = true;
    let silentSince: number | undefined;
    const end = (verdict: Verdict & { dead?: true }): void => {
      clearInterval(timer);
      worker.removeAllListeners('message');
      worker.removeAllListeners('error');
      resolve(verdict);
    };
    const killedBy = (by: string): void => {
      void worker.terminate();
      end({ number: task.number, outcome: 'killed', by, dead: true });
    };
    const look = async (): Promise<void> => {
      const now = await cpuSeconds();
      if (isAlive || silentSince === undefined) silentSince = now;
      isAlive = false;
      if (now - silentSince > SILENT_CPU_SECONDS) killedBy('a test that does not end');
    };
    const timer = setInterval(() => {
      look().catch(() => undefined);
    }, LOOK_EVERY_MILLISECONDS);
    worker.on('message', (message: 'alive' | Verdict) => {
      if (message === 'alive') isAlive = true;
      else end(message);
    });
    worker.on('error', (error) => {
      killedBy(`the thread died: ${String(error).slice(0, 100)}`);
    });
    worker.postMessage(task);
  });
}

/** Has every task done by so many threads side by side. */
export async function doTasks(
  tasks: Iterator<Task>,
  threads: number,
  done: (verdict: Verdict) => void,
): Promise<void> {
  await Promise.all(
    Array.from({ length: threads }, async () => {
      let thread = await startThread();
      for (let next = tasks.next(); next.done !== true; next = tasks.next()) {
        let verdict = await doTask(thread, next.value);
        // What did not end is tried a second time by a thread of its own.
        if (verdict.dead) {
          thread = await startThread();
          verdict = await doTask(thread, next.value);
        }
        if (verdict.dead) thread = await startThread();
        done(verdict);
      }
      await thread.worker.terminate();
    }),
  );
}
