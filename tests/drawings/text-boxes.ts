/** A box on the sheet of a drawing, in its units. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Widths of letters in a wide face, thousandths of the size: no usual face for screens is wider. */
const WIDTHS: Readonly<Record<string, number>> = {
  ...widths('ijl|', 290),
  ...widths(" .,'’:;!", 340),
  ...widths('frt()-/', 420),
  ...widths('cszkvxyJ', 595),
  ...widths('abdeghnopqu0123456789FLTYEPS', 640),
  ...widths('ABCGKRVXZHUN', 755),
  ...widths('DOQw+×=<>', 840),
  ...widths('mMW%', 990),
};

function widths(letters: string, width: number): Record<string, number> {
  return Object.fromEntries([...letters].map((letter) => [letter, width]));
}

/** An unknown letter counts as a wide one. */
const WIDEST = 1000;
/** Heavy letters are wider. */
const HEAVY = 1.1;

export function widthOf(text: string, size: number, isHeavy: boolean): number {
  const sum = [...text].reduce((total, letter) => total + (WIDTHS[letter] ?? WIDEST), 0);
  return (sum / 1000) * size * (isHeavy ? HEAVY : 1);
}

/** The box of a line of text from the place where SVG writes it. */
export function textBox(
  text: string,
  x: number,
  baseline: number,
  anchor: string,
  size: number,
  isHeavy = false,
): Box {
  const width = widthOf(text, size, isHeavy);
  const left = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x;
  return { left, top: baseline - 0.8 * size, right: left + width, bottom: baseline + 0.24 * size };
}

export const overlap = (a: Box, b: Box, room = 0): boolean =>
  a.left < b.right + room &&
  b.left < a.right + room &&
  a.top < b.bottom + room &&
  b.top < a.bottom + room;

export const holds = (box: Box, x: number, y: number): boolean =>
  x > box.left && x < box.right && y > box.top && y < box.bottom;
