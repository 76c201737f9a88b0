/**
 * Flashes on shown pixels, counted as WCAG 2.2 (success criterion 2.3.1) defines them: pairs of opposing
 * changes of relative luminance by a tenth of white or more, the darker side below 0.80; for red, pairs
 * that touch a saturated red. Area counts in the worst window of 341 × 256 pixels, of which a quarter may
 * flash more than three times within a second. Figures are from memory of the criterion's text.
 */

/** The picture as it is shown, CSS pixels. */
const SHOWN = { width: 640, height: 480 } as const;
/** Side of the squares whose means are followed, CSS pixels. */
const BLOCK = 10;
export const BLOCKS = { across: SHOWN.width / BLOCK, down: SHOWN.height / BLOCK } as const;
const WINDOW = { across: 34, down: 26 } as const;
/** Seven changes within a second are more than three pairs. */
const MOST_CHANGES = 6;

const linear = Float64Array.from({ length: 256 }, (_, code) => {
  const v = code / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
});

/** Means of a block: relative luminance, how red it is, and whether it is a saturated red. */
export interface BlockMeans {
  readonly luminance: Float64Array;
  readonly redness: Float64Array;
  readonly isRed: Uint8Array;
}

/** Means of all blocks of a picture of any width that is shown at 640. */
export function blockMeans(pixels: Uint32Array, width: number): BlockMeans {
  const side = (BLOCK * width) / SHOWN.width;
  const count = BLOCKS.across * BLOCKS.down;
  const luminance = new Float64Array(count);
  const redness = new Float64Array(count);
  const isRed = new Uint8Array(count);
  for (let block = 0; block < count; block += 1) {
    const left = (block % BLOCKS.across) * side;
    const top = Math.floor(block / BLOCKS.across) * side;
    let [red, green, blue] = [0, 0, 0];
    for (let y = top; y < top + side; y += 1) {
      for (let x = left; x < left + side; x += 1) {
        const pixel = pixels[y * width + x]!;
        red += linear[pixel & 255]!;
        green += linear[(pixel >> 8) & 255]!;
        blue += linear[(pixel >> 16) & 255]!;
      }
    }
    const area = side * side;
    luminance[block] = (0.2126 * red + 0.7152 * green + 0.0722 * blue) / area;
    redness[block] = (Math.max(0, red - green - blue) * 320) / area;
    isRed[block] = Number(red / (red + green + blue + 1e-9) >= 0.8);
  }
  return { luminance, redness, isRed };
}

/** Frames at which a series turns round after a change of at least `least`, by the rule of `counts`. */
function changes(
  series: readonly number[],
  least: number,
  counts: (from: number, to: number) => boolean,
): readonly number[] {
  const found: number[] = [];
  let low = 0;
  let high = 0;
  let way = 0;
  for (let at = 1; at < series.length; at += 1) {
    const value = series[at]!;
    if (value < series[low]!) low = at;
    if (value > series[high]!) high = at;
    const rose = value - series[low]! >= least && way !== 1;
    const fell = series[high]! - value >= least && way !== -1;
    if (rose || fell) {
      if (counts(rose ? low : high, at)) found.push(at);
      way = rose ? 1 : -1;
      low = at;
      high = at;
    }
  }
  return found;
}

/** True when more than three flashes lie within a second. */
function flashesTooOften(found: readonly number[], picturesPerSecond: number): boolean {
  return found.some(
    (at, index) => index >= MOST_CHANGES && at - found[index - MOST_CHANGES]! < picturesPerSecond,
  );
}

/** Share of the worst window that flashes too often. */
function worstWindow(flashing: Uint8Array): number {
  let most = 0;
  for (let top = 0; top + WINDOW.down <= BLOCKS.down; top += 1) {
    for (let left = 0; left + WINDOW.across <= BLOCKS.across; left += 1) {
      let sum = 0;
      for (let y = top; y < top + WINDOW.down; y += 1) {
        for (let x = left; x < left + WINDOW.across; x += 1)
          sum += flashing[y * BLOCKS.across + x]!;
      }
      most = Math.max(most, sum);
    }
  }
  return most / (WINDOW.across * WINDOW.down);
}

/** What flashes in a run of pictures: shares of the worst window. */
export interface Flashing {
  readonly general: number;
  readonly red: number;
}

export function countFlashes(run: readonly BlockMeans[], picturesPerSecond: number): Flashing {
  const count = BLOCKS.across * BLOCKS.down;
  const general = new Uint8Array(count);
  const red = new Uint8Array(count);
  for (let block = 0; block < count; block += 1) {
    const light = run.map(({ luminance }) => luminance[block]!);
    const found = changes(light, 0.1, (from, to) => Math.min(light[from]!, light[to]!) < 0.8);
    general[block] = Number(flashesTooOften(found, picturesPerSecond));
    const redness = run.map((means) => means.redness[block]!);
    const isRed = (at: number): boolean => run[at]!.isRed[block] === 1;
    const redFound = changes(redness, 20, (from, to) => isRed(from) || isRed(to));
    red[block] = Number(flashesTooOften(redFound, picturesPerSecond));
  }
  return { general: worstWindow(general), red: worstWindow(red) };
}
