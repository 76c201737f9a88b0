// A box of five hundred reels: the totals, keeping one letter, and the time from a letter to the next picture.
import { boxTotals } from '../../../src/worksheets/box/box-totals.ts';
import { makeJob, makeReel } from '../../ui/box/some-box.ts';
import { onBuiltPage } from '../parts/built-page.ts';
import { middleAndTail } from '../parts/times.ts';

const REELS = 500;
const LETTERS = 40;
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

await onBuiltPage(async (page, addressOf) => {
  await page.goto(addressOf('/box/'));
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
});
