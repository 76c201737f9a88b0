import type { Page } from '@playwright/test';
import { extractText, getDocumentProxy } from 'unpdf';

/** The page printed to PDF: the text of each sheet of paper, white space made plain. */
export async function printedText(page: Page): Promise<readonly string[]> {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)));
  return text.map((sheet) => sheet.replaceAll(/\s+/gu, ' '));
}
