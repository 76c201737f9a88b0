/** Width of every drawing in page units; heights vary. */
export const PAGE_WIDTH = 640;

/**
 * Line height of text in page units. The style sheet prints text at up to 24 units on a narrow
 * phone and smaller on wide pages, so layouts leave room for the largest.
 */
export const TEXT_HEIGHT = 26;

/** Room that a text needs at its largest, page units. */
export function textWidth(text: string): number {
  return text.length * 12.6;
}

/** A coordinate rounded for the page. Rounding happens here only, never before. */
export function at(value: number): number {
  const rounded = Math.round(value * 100) / 100;
  return Number.isFinite(rounded) ? rounded : 0;
}

/** Path through points. */
export function pathThrough(points: readonly { readonly x: number; readonly y: number }[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${at(x)} ${at(y)}`).join('');
}

/**
 * Which labels can be printed in one line without touching each other. Earlier places in `order` win.
 *
 * @param labels  middle and width of each label, page units
 * @param order   indexes of labels, the most important first
 */
export function labelsThatFit(
  labels: readonly { readonly centre: number; readonly width: number }[],
  order: readonly number[],
): ReadonlySet<number> {
  const taken: { from: number; to: number }[] = [];
  const kept = new Set<number>();
  for (const index of order) {
    const label = labels[index];
    if (label === undefined || kept.has(index)) continue;
    const from = label.centre - label.width / 2 - 3;
    const to = label.centre + label.width / 2 + 3;
    if (taken.some((other) => from < other.to && to > other.from)) continue;
    taken.push({ from, to });
    kept.add(index);
  }
  return kept;
}

/** Every how many labels one can be printed, when each may be `room` wide. */
export function labelStride(room: number, widest: number): number {
  return room > 0 && Number.isFinite(room) ? Math.max(1, Math.ceil(widest / room)) : 1;
}
