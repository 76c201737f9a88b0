import { getDocumentProxy } from 'unpdf';

/** A line of text on a sheet of paper. */
export interface PrintedLine {
  readonly text: string;
  /** How far down the paper its foot is: 0 at the top, 1 at the bottom. */
  readonly down: number;
}

interface TextItem {
  readonly str: string;
  readonly transform: readonly number[];
}

/** The lines of each sheet of a PDF from top to bottom, without the foot of the page. */
export async function printedLines(pdf: Buffer): Promise<readonly (readonly PrintedLine[])[]> {
  const document = await getDocumentProxy(new Uint8Array(pdf));
  const numbers = Array.from({ length: document.numPages }, (_, index) => index + 1);
  return Promise.all(
    numbers.map(async (number) => {
      const sheet = await document.getPage(number);
      const { height } = sheet.getViewport({ scale: 1 });
      const { items } = await sheet.getTextContent();
      const lines = new Map<number, string>();
      for (const item of items) {
        if (!('str' in item)) continue;
        const { str, transform } = item as TextItem;
        const foot = Math.round(transform[5] ?? 0);
        lines.set(foot, (lines.get(foot) ?? '') + str);
      }
      return [...lines]
        .map(([foot, text]) => ({ text: text.replaceAll(/\s+/gu, ' ').trim(), foot }))
        .filter(({ text }) => text !== '')
        .map(({ text, foot }) => ({ text, down: 1 - foot / height }))
        .filter(({ down }) => down < 0.945)
        .sort((a, b) => a.down - b.down);
    }),
  );
}
