import { expect, test } from '@playwright/test';
import { readPages } from '../site/built-site.ts';
import { printedLines } from './printed-layout.ts';

// Chapters on paper: sheets of A4 that are filled, with no heading alone at the foot of one.

const squeeze = (text: string): string => text.replaceAll(/\s+/gu, '');
const chapters = readPages().filter(({ root }) => root.querySelector('main.leaf-chapter') !== null);

for (const { address } of chapters) {
  test(`${address} fills its sheets of paper and strands no heading`, async ({ page }) => {
    await page.goto(address);
    const heads = await page
      .locator(
        'main :is(h2, h3, .sheet-question, .verdict, .origin-status, .example-kind, caption, thead)',
      )
      .allTextContents();
    // Both columns of a sheet have a legend in one line.
    // An example ends with the sentence that a sheet begins with.
    const ends = (await page.locator('main .example-verdict').allTextContents()).map(squeeze);
    const headings = ['What you set or know What follows', ...heads].map(squeeze);
    const sheets = await printedLines(page);
    const faults: string[] = [];
    for (const [index, lines] of sheets.slice(0, -1).entries()) {
      const last = lines.at(-1);
      if (last === undefined) faults.push(`sheet ${index + 1} is empty`);
      else {
        const words = squeeze(last.text).replace(/^\d+\.\d+/u, '');
        // A long head is broken into lines: the last of them is how it ends.
        const isEndOf = (head: string): boolean =>
          head === words || (words.length > 12 && head.endsWith(words));
        const isHead = headings.some(isEndOf) && !ends.some(isEndOf);
        if (isHead) faults.push(`sheet ${index + 1} ends with “${last.text}”`);
        // A picture or formula at the foot has no text at its very end, hence the room.
        if (last.down < 0.55)
          faults.push(`sheet ${index + 1} is filled to ${last.down.toFixed(2)}`);
      }
    }
    expect(faults).toEqual([]);
  });
}
