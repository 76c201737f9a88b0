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
/** Mean level to which each band is brought, so that flicker and automatic exposure drop out. */
const BAND_LEVEL = 0.4;
/** A band darker than this is not brightened further: its noise would pass for motion. */
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
   * ⟨d_j, d_(j−lag)⟩ ÷ pixels of the band, d_j = picture j − picture j−1, each band brought to one
   * mean level. 0 where the earlier difference does not exist.
   */
  readonly gram: Float64Array;
}

/** Takes the small pictures of a recording in order and gives 72 numbers for each. */
export interface GramAccumulator {
  /**
   * @param picture  luma, 48 × 36 box means row by row in coded row order, 0 black to 1 white
   * @returns the numbers of this camera frame, a new array of 72
   * @throws {RangeError} the picture has another size
   */
  readonly add: (picture: ArrayLike<number>) => Float64Array;
}

function levelled(picture: ArrayLike<number>, into: Float64Array): void {
  for (let start = 0; start < into.length; start += BAND_PIXELS) {
    let sum = 0;
    for (let at = start; at < start + BAND_PIXELS; at += 1) sum += picture[at] ?? 0;
    const gain = BAND_LEVEL / Math.max(sum / BAND_PIXELS, DARKEST_LEVEL);
    for (let at = start; at < start + BAND_PIXELS; at += 1) into[at] = (picture[at] ?? 0) * gain;
  }
}

/**
 * Reduces pictures to the products of their differences, one camera frame at a time; it keeps seven
 * small pictures, however long the recording is.
 *
 * Model: each band of 3 rows is divided by its mean (never by less than 0.1) and multiplied by 0.4;
 * d_j = y_j − y_(j−1); for each band ⟨d_j, d_(j−l)⟩ ÷ 144 pixels, l = 0 … 5.
 *
 * @returns the accumulator
 * @source arithmetic
 */
export function gramAccumulator(): GramAccumulator {
  const size = PICTURE_COLUMNS * PICTURE_ROWS;
  let before: Float64Array | undefined;
  let spare = new Float64Array(size);
  const differences: Float64Array[] = [];

  return {
    add(picture) {
      requireInterval('picture length', picture.length, { minimum: size, maximum: size });
      const numbers = new Float64Array(NUMBERS_PER_FRAME);
      const levels = spare;
      levelled(picture, levels);
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
    if (frame < count) gram.set(accumulator.add(picture), frame * NUMBERS_PER_FRAME);
    frame += 1;
  }
  requireInterval('number of pictures', frame, { minimum: count, maximum: count });
  return { frameSeconds: Float64Array.from(frameSeconds), gram };
}
