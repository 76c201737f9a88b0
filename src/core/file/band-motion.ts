import { requireInterval } from '../../quantity/errors.ts';

/** Columns of the small picture that stands for a camera frame. */
export const PICTURE_COLUMNS = 48;
/** Rows of the small picture. */
export const PICTURE_ROWS = 36;
/** Bands of rows, read out one after the other by a rolling camera. */
export const BANDS = 12;
/** Differences that are compared with each other: the latest and the five before it. */
export const LAGS = 6;
/** Numbers kept of one camera frame. */
export const NUMBERS_PER_FRAME = BANDS * LAGS;

const BAND_PIXELS = (PICTURE_COLUMNS * PICTURE_ROWS) / BANDS;
/** Mean level to which each row is brought, so that flicker and automatic exposure drop out. */
const ROW_LEVEL = 0.4;
/** A row darker than this is not brightened further: its noise would pass for motion. */
const DARKEST_LEVEL = 0.1;

/**
 * What is kept of a recording's pictures: how the change from one camera frame to the next resembles
 * the changes before it, band by band. Nothing else of the pictures is needed to find the film frames.
 */
export interface BandMotion {
  /** Presentation time of each camera frame, s, as the file gives it. */
  readonly frameSeconds: Float64Array;
  /**
   * Products of differences, frames × 12 bands × 6 lags; index ((frame × 12) + band) × 6 + lag holds
   * ⟨d_j, d_(j−lag)⟩ ÷ pixels of the band, d_j = picture j − picture j−1, each row brought to one
   * mean level. 0 where the earlier difference does not exist, and where the band shows nothing new: it
   * is behind a blade, or the file shows a picture twice.
   */
  readonly gram: Float64Array | Float32Array;
}

/** Takes the small pictures of a recording in order and gives 72 numbers for each. */
export interface GramAccumulator {
  /**
   * @param picture  luma, 48 × 36 box means row by row in coded row order, 0 black to 1 white
   * @param into  where the numbers go, 72; a new list where left out
   * @returns the numbers of this camera frame
   * @throws {RangeError} the picture has another size
   */
  readonly add: (picture: ArrayLike<number>, into?: Float64Array) => Float64Array;
}

/**
 * A band that falls below this share of its highest mean of the last six camera frames fell behind a
 * blade: it shows little, and the picture before is held instead.
 */
const BLADE_SHARE = 0.6;
const BAND_ROWS = PICTURE_ROWS / BANDS;

/** Mean of each row of one picture. */
function fillRowMeans(picture: ArrayLike<number>, means: Float64Array): void {
  for (let row = 0; row < PICTURE_ROWS; row += 1) {
    let sum = 0;
    for (let at = row * PICTURE_COLUMNS; at < (row + 1) * PICTURE_COLUMNS; at += 1)
      sum += picture[at] ?? 0;
    means[row] = sum / PICTURE_COLUMNS;
  }
}

/** Sum of the means of a band's rows. */
function bandSum(means: Float64Array | undefined, band: number): number {
  let sum = 0;
  for (let row = band * BAND_ROWS; row < (band + 1) * BAND_ROWS; row += 1) sum += means?.[row] ?? 0;
  return sum;
}

/** Brings each row to one level; a band behind a blade keeps the picture before. */
function levelled(
  picture: ArrayLike<number>,
  means: Float64Array,
  earlierMeans: readonly Float64Array[],
  before: Float64Array | undefined,
  into: Float64Array,
): void {
  for (let band = 0; band < BANDS; band += 1) {
    let usual = 0;
    for (const earlier of earlierMeans) usual = Math.max(usual, bandSum(earlier, band));
    const held = bandSum(means, band) < BLADE_SHARE * usual ? before : undefined;
    for (let row = band * BAND_ROWS; row < (band + 1) * BAND_ROWS; row += 1) {
      const gain = ROW_LEVEL / Math.max(means[row] ?? 0, DARKEST_LEVEL);
      for (let at = row * PICTURE_COLUMNS; at < (row + 1) * PICTURE_COLUMNS; at += 1)
        into[at] = held === undefined ? (picture[at] ?? 0) * gain : (held[at] ?? 0);
    }
  }
}

/**
 * Reduces pictures to the products of their differences, one camera frame at a time; it keeps seven
 * small pictures, however long the recording is.
 *
 * Model: each row is divided by its mean (never by less than 0.1) and multiplied by 0.4; a band of 3
 * rows behind a blade, below 0.6 of its highest mean of the last six camera frames, holds the picture
 * before, so its difference is exactly 0; d_j = y_j − y_(j−1); for each band ⟨d_j, d_(j−l)⟩ ÷ 144
 * pixels, l = 0 … 5.
 *
 * @returns the accumulator
 * @source arithmetic
 */
export function gramAccumulator(): GramAccumulator {
  const size = PICTURE_COLUMNS * PICTURE_ROWS;
  let before: Float64Array<ArrayBuffer> | undefined;
  let spare: Float64Array<ArrayBuffer> = new Float64Array(size);
  const differences: Float64Array[] = [];
  const earlierMeans: Float64Array[] = [];
  let nextMeans: Float64Array = new Float64Array(PICTURE_ROWS);

  return {
    add(picture, numbers = new Float64Array(NUMBERS_PER_FRAME)) {
      requireInterval('picture length', picture.length, { minimum: size, maximum: size });
      numbers.fill(0);
      const levels = spare;
      const means = nextMeans;
      fillRowMeans(picture, means);
      levelled(picture, means, earlierMeans, before, levels);
      earlierMeans.unshift(means);
      nextMeans =
        (earlierMeans.length > LAGS ? earlierMeans.pop() : undefined) ??
        new Float64Array(PICTURE_ROWS);
      if (before === undefined) {
        before = levels;
        spare = new Float64Array(size);
        return numbers;
      }
      const difference =
        differences.length === LAGS
          ? (differences.pop() ?? new Float64Array(size))
          : new Float64Array(size);
      for (let at = 0; at < size; at += 1) difference[at] = (levels[at] ?? 0) - (before[at] ?? 0);
      spare = before;
      before = levels;
      differences.unshift(difference);
      for (const [lag, earlier] of differences.entries()) {
        for (let band = 0; band < BANDS; band += 1) {
          let sum = 0;
          for (let at = band * BAND_PIXELS; at < (band + 1) * BAND_PIXELS; at += 1)
            sum += (difference[at] ?? 0) * (earlier[at] ?? 0);
          numbers[band * LAGS + lag] = sum / BAND_PIXELS;
        }
      }
      return numbers;
    },
  };
}

/**
 * Band motion of a whole recording whose pictures are at hand.
 *
 * @param pictures      small pictures in order, as {@link GramAccumulator.add} takes them
 * @param frameSeconds  presentation time of each, s
 * @returns the times and the numbers
 * @throws {RangeError} a picture of another size, or more or fewer pictures than times
 */
export function bandMotionOfPictures(
  pictures: Iterable<ArrayLike<number>>,
  frameSeconds: ArrayLike<number>,
): BandMotion {
  const accumulator = gramAccumulator();
  const count = frameSeconds.length;
  const gram = new Float64Array(count * NUMBERS_PER_FRAME);
  let frame = 0;
  for (const picture of pictures) {
    const from = frame * NUMBERS_PER_FRAME;
    if (frame < count) accumulator.add(picture, gram.subarray(from, from + NUMBERS_PER_FRAME));
    frame += 1;
  }
  requireInterval('number of pictures', frame, { minimum: count, maximum: count });
  return { frameSeconds: Float64Array.from(frameSeconds), gram };
}
