/**
 * Flashes on shown pixels, counted as WCAG 2.2 (success criterion 2.3.1, definition of the general flash
 * and red flash thresholds) has them: pairs of opposing changes of relative luminance by a tenth of white
 * or more, the darker side below 0.80; for red, pairs of which one state is a saturated red,
 * R/(R + G + B) ≥ 0.8 in linear light, and that lie more than 0.2 apart in the CIE 1976 UCS diagram. Area
 * counts in the worst window of 341 × 256 pixels, of which a quarter may flash more than three times
 * within a second.
 *
 * Versions 2.0 and 2.1 had another working definition of the red flash, a change of (R − G − B) × 320 by
 * more than 20, which an uneven light alone can make. It is counted as well.
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

/** Means of a block: relative luminance, colour, how red it is, and whether it is a saturated red. */
export interface BlockMeans {
  readonly luminance: Float64Array;
  /** Place in the CIE 1976 UCS diagram, u′ and v′ by turns. */
  readonly chromaticity: Float64Array;
  readonly redness: Float64Array;
  readonly isRed: Uint8Array;
}

/** D65 white; a block without any light counts as one. */
const WHITE_PLACE = [0.1978, 0.4683] as const;

/** Place of linear sRGB in the CIE 1976 UCS diagram. */
function chromaticityOf(red: number, green: number, blue: number): readonly [number, number] {
  const x = 0.4124564 * red + 0.3575761 * green + 0.1804375 * blue;
  const y = 0.2126729 * red + 0.7151522 * green + 0.072175 * blue;
  const z = 0.0193339 * red + 0.119192 * green + 0.9503041 * blue;
  const all = x + 15 * y + 3 * z;
  return all === 0 ? WHITE_PLACE : [(4 * x) / all, (9 * y) / all];
}

/** Means of all blocks of a picture of any width that is shown at 640. */
export function blockMeans(pixels: Uint32Array, width: number): BlockMeans {
  const side = (BLOCK * width) / SHOWN.width;
  const count = BLOCKS.across * BLOCKS.down;
  const luminance = new Float64Array(count);
  const chromaticity = new Float64Array(2 * count);
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
    chromaticity.set(chromaticityOf(red, green, blue), 2 * block);
    redness[block] = (Math.max(0, red - green - blue) * 320) / area;
    isRed[block] = Number(red / (red + green + blue + 1e-9) >= 0.8);
  }
  return { luminance, chromaticity, redness, isRed };
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

/**
 * Frames at which a block has come more than 0.2 from any of its places since the change before, one of
 * the two a saturated red. Changes that do not oppose each other count too, so it never counts too few.
 */
function redChanges(run: readonly BlockMeans[], block: number): readonly number[] {
  if (!run.some(({ isRed }) => isRed[block] === 1)) return [];
  const found: number[] = [];
  let since = 0;
  for (let at = 1; at < run.length; at += 1) {
    const now = run[at]!;
    for (let earlier = since; earlier < at; earlier += 1) {
      const then = run[earlier]!;
      if (now.isRed[block] === 0 && then.isRed[block] === 0) continue;
      const u = now.chromaticity[2 * block]! - then.chromaticity[2 * block]!;
      const v = now.chromaticity[2 * block + 1]! - then.chromaticity[2 * block + 1]!;
      if (Math.hypot(u, v) <= 0.2) continue;
      found.push(at);
      since = at;
      break;
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
  /** By the working definition of versions 2.0 and 2.1. */
  readonly formerRed: number;
}

export function countFlashes(run: readonly BlockMeans[], picturesPerSecond: number): Flashing {
  const count = BLOCKS.across * BLOCKS.down;
  const general = new Uint8Array(count);
  const red = new Uint8Array(count);
  const formerRed = new Uint8Array(count);
  for (let block = 0; block < count; block += 1) {
    const light = run.map(({ luminance }) => luminance[block]!);
    const found = changes(light, 0.1, (from, to) => Math.min(light[from]!, light[to]!) < 0.8);
    general[block] = Number(flashesTooOften(found, picturesPerSecond));
    const redness = run.map((means) => means.redness[block]!);
    const isRed = (at: number): boolean => run[at]!.isRed[block] === 1;
    const redFound = changes(redness, 20, (from, to) => isRed(from) || isRed(to));
    formerRed[block] = Number(flashesTooOften(redFound, picturesPerSecond));
    red[block] = Number(flashesTooOften(redChanges(run, block), picturesPerSecond));
  }
  return {
    general: worstWindow(general),
    red: worstWindow(red),
    formerRed: worstWindow(formerRed),
  };
}
