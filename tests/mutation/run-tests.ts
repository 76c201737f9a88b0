import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { projectFolder } from '../walls/source-files.ts';
import type { Round } from './related-tests.ts';

/** What became of a round of tests. */
export type Ending = 'passed' | 'failed' | 'too long';

/** A source file and the text that stands for it. */
export interface Replaced {
  readonly file: string;
  /** Path of the text. */
  readonly text: string;
}

/** Runs a round up to its first failure; a run that hangs is ended with all that it started. */
export function runRound(
  round: Round,
  longestSeconds: number,
  replaced?: Replaced,
): Promise<Ending> {
  const titles = round.titles === undefined ? [] : ['-t', round.titles];
  return new Promise((resolve) => {
    const child = spawn(
      process.execPath,
      [
        join(projectFolder, 'node_modules/vitest/vitest.mjs'),
        'run',
        '--config=tests/mutation/mutant.vitest.config.ts',
        '--reporter=dot',
        ...titles,
        ...round.tests,
      ],
      {
        cwd: projectFolder,
        stdio: 'ignore',
        detached: true,
        env: {
          ...process.env,
          ...(replaced === undefined
            ? {}
            : { MUTANT_FILE: join(projectFolder, replaced.file), MUTANT_TEXT: replaced.text }),
        },
      },
    );
    let isTooLong = false;
    const timer = setTimeout(() => {
      isTooLong = true;
      // The group: a test that never ends holds a process of its own.
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
    }, longestSeconds * 1000);
    child.on('close', (status) => {
      clearTimeout(timer);
      if (isTooLong) resolve('too long');
      else resolve(status === 0 ? 'passed' : 'failed');
    });
  });
}
