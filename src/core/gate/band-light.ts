/** Bands into which a recorded picture is cut, from the first coded row to the last. */
export const BAND_COUNT = 12;

/**
 * What a recording of the lit, empty gate comes down to: the light in each band of each camera frame.
 * It does not grow with the size of the picture.
 */
export interface BandLight {
  /** Presentation time of each camera frame, s, as the file gives it; it need not start at 0. */
  readonly frameSeconds: Float64Array;
  /**
   * Mean linear light of each band, 0 black to 1 the brightest that the file can hold; index
   * frame × BAND_COUNT + band, where band 0 is made of the first coded rows.
   */
  readonly bands: Float64Array;
  /** Share of all samples looked at that are at the top of the file's range, 0–1. */
  readonly clippedShare: number;
  /** Share of all samples looked at that are at the bottom of it, 0–1. */
  readonly blackShare?: number;
}
