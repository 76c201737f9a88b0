// What the tests of the sheets that read recordings do again and again.
import { readFileSync } from 'node:fs';
import type { Download, Locator, Page } from '@playwright/test';

/** Time for reading or writing a recording where several pages do so at once, ms. */
const LONGEST = 60_000;

/**
 * Waits until words stand in a part of the page. A check that is asked again and again while they are missing
 * would have the runner describe the whole page each time, which takes more than the reading.
 *
 * @param part where the words stand; one of several may hold them
 */
export async function untilSaid(part: Locator, words: string | RegExp): Promise<void> {
  await part.filter({ hasText: words }).first().waitFor({ timeout: LONGEST });
}

/** Waits until a recording is read, of one name where it is given. */
export async function untilRead(sheet: Locator, name = ''): Promise<void> {
  await untilSaid(sheet.locator('.recording-name'), `Read: ${name}`);
}

/** Opens a page and has its sheet read a file. */
export async function readFile(page: Page, address: string, path: string): Promise<Locator> {
  await page.goto(address);
  const sheet = page.locator('recording-sheet');
  await readAnother(sheet, path);
  return sheet;
}

/** Has a sheet read another file; the name in the sheet must differ from that of the one before. */
export async function readAnother(sheet: Locator, path: string): Promise<void> {
  await sheet.locator('input[type=file]').first().setInputFiles(path);
  await untilRead(sheet, path.replace(/^.*[/\\]/u, ''));
}

/** Opens a page and has its sheet read the demo recording. */
export async function readDemo(page: Page, address: string): Promise<Locator> {
  await page.goto(address);
  const sheet = page.locator('recording-sheet');
  await sheet.getByRole('button', { name: 'Read the demo recording' }).click();
  await untilRead(sheet);
  return sheet;
}

/** The answer beside a label. */
export const answerTo = (sheet: Locator, label: string): Locator =>
  sheet.locator('.answer', { has: sheet.page().locator(`dt:text-is("${label}")`) }).locator('dd');

/** The file that a press gives. */
export async function taken(page: Page, press: Locator): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent('download'), press.click()]);
  return download;
}

/** Text of the file that a press gives. */
export async function takenText(page: Page, press: Locator): Promise<string> {
  const download = await taken(page, press);
  return readFileSync(await download.path(), 'utf8');
}
