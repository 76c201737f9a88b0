import { getDocumentProxy } from 'unpdf';

/** A run of text on a sheet of paper. */
export interface PlacedText {
  readonly text: string;
  /** Millimetres from the left edge of the paper. */
  readonly left: number;
  /** Height of the letters, points. */
  readonly size: number;
}

const MILLIMETRES_PER_POINT = 25.4 / 72;

/** The texts of a PDF with their places, sheet by sheet. */
export async function placesOfTexts(pdf: Uint8Array): Promise<readonly (readonly PlacedText[])[]> {
  const document = await getDocumentProxy(new Uint8Array(pdf));
  const numbers = Array.from({ length: document.numPages }, (_, index) => index + 1);
  return Promise.all(
    numbers.map(async (number) => {
      const page = await document.getPage(number);
      const { items } = await page.getTextContent();
      return items.flatMap((item) =>
        'str' in item
          ? [
              {
                text: item.str.trim(),
                left: Number(item.transform[4]) * MILLIMETRES_PER_POINT,
                size: Math.abs(Number(item.transform[3])),
              },
            ]
          : [],
      );
    }),
  );
}
