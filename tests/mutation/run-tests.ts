import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { projectFolder } from '../walls/source-files.ts';

/** A source file and the text that stands for it. */
export interface Replaced {
  readonly file: string;
  /** Path of the text. */
  readonly text: string;
}

/** Runs a test file by the test framework itself, up to its first failure. */
export function runByFramework(testFile: string, replaced: Replaced): 'passed' | 'failed' {
  const { status } = spawnSync(
    process.execPath,
    [
      join(projectFolder, 'node_modules/vitest/vitest.mjs'),
      'run',
      '--config=tests/mutation/mutant.vitest.config.ts',
      '--reporter=dot',
      testFile,
    ],
    {
      cwd: projectFolder,
      stdio: 'ignore',
      env: {
        ...process.env,
        MUTANT_FILE: join(projectFolder, replaced.file),
        MUTANT_TEXT: replaced.text,
      },
    },
  );
  return status === 0 ? 'passed' : 'failed';
}
