import type { Page } from '@playwright/test';
import { printedLines } from '../printed-layout.ts';

const squeeze = (text: string): string => text.replaceAll(/\s+/gu, '');

/** Sheets of A4 of a printed chapter that are not filled, or have a heading alone at their foot. */
export async function sheetFaults(page: Page, pdf: Buffer): Promise<readonly string[]> {
  const heads = await page
    .locator(
      'main :is(h2, h3, .sheet-question, .verdict, .origin-status, .example-kind, caption, thead)',
    )
    .allTextContents();
  // Both columns of a sheet have a legend in one line.
  // An example ends with the sentence that a sheet begins with.
  const ends = (await page.locator('main .example-verdict').allTextContents()).map(squeeze);
  const headings = ['What you set or know What follows', ...heads].map(squeeze);
  const sheets = await printedLines(pdf);
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
      if (last.down < 0.55) faults.push(`sheet ${index + 1} is filled to ${last.down.toFixed(2)}`);
    }
  }
  return faults;
}
