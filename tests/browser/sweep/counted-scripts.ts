import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

let counted: Readonly<Record<string, readonly string[]>> | undefined;

/**
 * Scripts that the byte budgets have counted for a page. A process of its own works them out for all pages,
 * which takes it two seconds; the loader of the browser tests would take half a minute for the worksheets.
 */
export function countedScripts(address: string): ReadonlySet<string> {
  const program = fileURLToPath(new URL('../../tools/print-counted-scripts.ts', import.meta.url));
  counted ??= JSON.parse(
    execFileSync(process.execPath, ['--experimental-strip-types', '--no-warnings', program], {
      encoding: 'utf8',
      maxBuffer: 1024 ** 3,
    }),
  ) as Readonly<Record<string, readonly string[]>>;
  return new Set(counted[address]);
}
