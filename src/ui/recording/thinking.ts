import type { ThinkingAnswer, ThinkingTask } from './thinking-messages.ts';

/** Thrown when the sums cannot be done: the script is not there, or the machine ran out of memory. */
export class ThinkingFailedError extends Error {
  override readonly name = 'ThinkingFailedError';
}

/** Large numbers go over to the worker without a copy. */
function movedWith(task: ThinkingTask): Transferable[] {
  if (task.task === 'sound') return [task.samples.buffer];
  return task.task === 'film' && task.motion !== undefined
    ? [task.motion.gram.buffer as ArrayBuffer]
    : [];
}

/** A worker for the sums, kept as long as its film may be asked about again. */
export class Thinking {
  #worker: Worker | undefined;

  /**
   * Asks one thing; the one before must have been answered.
   *
   * @throws {ThinkingFailedError}
   */
  ask(task: ThinkingTask, signal: AbortSignal): Promise<ThinkingAnswer | 'stopped'> {
    const worker = (this.#worker ??= new Worker(new URL('./thinking-worker.ts', import.meta.url), {
      type: 'module',
    }));
    return new Promise((resolve, reject) => {
      const done = new AbortController();
      const stop = (): void => {
        done.abort();
        this.end();
        resolve('stopped');
      };
      if (signal.aborted) {
        stop();
        return;
      }
      signal.addEventListener('abort', stop, { signal: done.signal });
      worker.addEventListener(
        'message',
        ({ data }: MessageEvent<ThinkingAnswer>) => {
          done.abort();
          resolve(data);
        },
        { signal: done.signal },
      );
      worker.addEventListener(
        'error',
        ({ message }) => {
          done.abort();
          this.end();
          reject(new ThinkingFailedError(message));
        },
        { signal: done.signal },
      );
      worker.postMessage(task, movedWith(task));
    });
  }

  end(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }
}
