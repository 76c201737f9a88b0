import { RIGHT_WAY_ROUND, turnFilters, type PictureTurn } from './picture-turn.ts';

/**
 * What a recording says about its code values: limited range (`tv`), or full range (`pc`) with the
 * colour matrix it names. A recording that says nothing is left as it is.
 */
export type CodeRange = 'limited' | 'full-bt709' | 'full-bt601' | 'full-unnamed';

/** What has to be known of a recording before it is copied. */
export interface RecordedPicture {
  readonly turn: PictureTurn;
  readonly codeRange: CodeRange;
}

export const RECORDED_RIGHT: RecordedPicture = { turn: RIGHT_WAY_ROUND, codeRange: 'limited' };

/**
 * Filters that turn the picture and keep every code value. Some versions of the tool squeeze
 * full-range pictures of 8 bits into the limited range on the way to the lossless format, 256 levels
 * into 220; a scaler that is told “full” on both sides leaves them alone.
 */
export function copyFilters({ turn, codeRange }: RecordedPicture): readonly string[] {
  const range = codeRange === 'limited' ? [] : ['scale=in_range=full:out_range=full'];
  return [...turnFilters(turn), ...range];
}

/** Options that name the colour matrix again where the scaler would drop its name. */
export function matrixOptions({ codeRange }: RecordedPicture): string {
  if (codeRange === 'full-bt709') return ' -colorspace bt709';
  return codeRange === 'full-bt601' ? ' -colorspace smpte170m' : '';
}

/**
 * FFV1 version 3, every picture on its own, sixteen slices with a checksum in each: a damaged byte is
 * noticed on reading and spoils a sixteenth of one picture.
 */
export const LOSSLESS = '-c:v ffv1 -level 3 -g 1 -slices 16 -slicecrc 1';
