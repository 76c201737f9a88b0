import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { CDPSession } from '@playwright/test';

/** What the processes of a browser have used since they began, ms. */
export interface ProcessorTime {
  /** By kind of process: page (“renderer”), screen (“GPU”), browser and what else there is. */
  readonly used: ReadonlyMap<string, number>;
  /** Time for which threads were ready but had no processor, all together; undefined where the system does not tell. */
  readonly waited: number | undefined;
}

/** Waiting of all threads of a process, ms: the second number of the scheduler's three. */
function waitedBy(processId: number): number | undefined {
  const threads = `/proc/${processId}/task`;
  if (!existsSync(threads)) return undefined;
  let nanoseconds = 0;
  for (const thread of readdirSync(threads)) {
    try {
      nanoseconds += Number(readFileSync(`${threads}/${thread}/schedstat`, 'utf8').split(' ')[1]);
    } catch {
      // It has ended between the two lines.
    }
  }
  return nanoseconds / 1e6;
}

/** Asks a browser for the time of its processors. */
export async function processorTime(browser: CDPSession): Promise<ProcessorTime> {
  const { processInfo } = await browser.send('SystemInfo.getProcessInfo');
  const used = new Map<string, number>();
  let waited: number | undefined;
  for (const { id, type, cpuTime } of processInfo) {
    used.set(type, (used.get(type) ?? 0) + 1000 * cpuTime);
    const more = waitedBy(id);
    if (more !== undefined) waited = (waited ?? 0) + more;
  }
  return { used, waited };
}

/** Time between two answers, for each of some pictures, as a line prints it. */
export function timeAPicture(
  before: ProcessorTime,
  after: ProcessorTime,
  pictures: number,
): readonly string[] {
  const each = (milliseconds: number): string => (milliseconds / pictures).toFixed(1);
  const spent = [...after.used].map(
    ([type, used]) => [type, used - (before.used.get(type) ?? 0)] as const,
  );
  const all = spent.reduce((sum, [, used]) => sum + used, 0);
  const parts = spent
    .filter(([, used]) => used > 0.05 * pictures)
    .sort(([, a], [, b]) => b - a)
    .map(([type, used]) => `${type} ${each(used)}`);
  const lines = [
    `processor time of the whole browser: ${each(all)} ms a picture (${parts.join(', ')})`,
  ];
  if (before.waited !== undefined && after.waited !== undefined) {
    lines.push(
      `its threads were ready and waited for a processor: ${each(after.waited - before.waited)} ms a ` +
        'picture; the more, the more of the figures here is the work of others',
    );
  }
  return lines;
}
