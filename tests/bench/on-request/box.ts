// A box of five hundred reels: the totals, keeping one letter, and the time from a letter to the next picture.
import { spawn } from 'node:child_process';
import { setTimeout } from 'node:timers/promises';
import { chromium } from '@playwright/test';
import { boxTotals } from '../../../src/worksheets/box/box-totals.ts';
import { findChromium, launchArguments } from '../../browser/chromium.ts';
import { makeJob, makeReel } from '../../ui/box/some-box.ts';

const REELS = 500;
const LETTERS = 40;
const PORT = 20_000 + (process.pid % 20_000);

function middleAndTail(times: readonly number[]): string {
  const ordered = times.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    (ordered[Math.min(ordered.length - 1, Math.floor(share * ordered.length))] ?? 0).toFixed(1);
  return `median ${at(0.5)} ms, p95 ${at(0.95)} ms, longest ${at(1)} ms`;
}

const job = makeJob(
  Array.from({ length: REELS }, (_, index) =>
    makeReel(index + 1, { gauge: 'Super 8', lengthMetres: `${15 + index / 7}`, nativeFps: '18' }),
  ),
);
const totals = Array.from({ length: 20 }, () => {
  const start = performance.now();
  boxTotals(job, {});
  return performance.now() - start;
});
console.log(`totals of ${REELS} reels: ${middleAndTail(totals.slice(5))}`);

const site = spawn(process.execPath, [
  ...['--experimental-strip-types', '--no-warnings'],
  ...['tests/tools/serve-dist.ts', String(PORT), 'dist'],
]);
const browser = await chromium.launch({
  executablePath: await findChromium(),
  args: launchArguments(),
});
try {
  await setTimeout(1500);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`http://127.0.0.1:${PORT}/box/`);
  await page.locator('box-form[data-ready="true"]').waitFor();
  await page.getByRole('button', { name: 'New job' }).click();
  await page.evaluate((count) => {
    const clipboardData = new DataTransfer();
    const lines = Array.from(
      { length: count },
      (_, at) => `x${at}\tReel ${at}\tS8\t200 ft\t\t18\t`,
    );
    clipboardData.setData('text/plain', lines.join('\n'));
    document
      .querySelector('[data-row="0"][data-column="0"]')
      ?.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
  }, REELS);
  await page.locator(`[data-row="${REELS - 1}"][data-column="1"]`).waitFor();
  for (const row of [3, REELS / 2, REELS - 1]) {
    const letters = await page.evaluate(
      async ({ at, count }) => {
        const field = document.querySelector<HTMLInputElement>(
          `[data-row="${at}"][data-column="1"]`,
        );
        if (field === null) throw new Error('no such field');
        field.focus();
        const times: number[] = [];
        for (let letter = 0; letter < count; letter += 1) {
          await new Promise(requestAnimationFrame);
          const start = performance.now();
          field.value += 'a';
          field.dispatchEvent(new InputEvent('input', { bubbles: true }));
          await new Promise<void>((resolve) => {
            requestAnimationFrame(() => {
              globalThis.setTimeout(resolve);
            });
          });
          times.push(performance.now() - start);
        }
        return times;
      },
      { at: row, count: LETTERS },
    );
    console.log(`a letter in line ${row + 1}, to the next picture: ${middleAndTail(letters)}`);
  }
} finally {
  await browser.close();
  site.kill();
}
