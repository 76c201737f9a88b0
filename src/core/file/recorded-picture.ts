import { RIGHT_WAY_ROUND, turnFilters, type PictureTurn } from '../gate/picture-turn.ts';

/**
 * What a recording says about its code values: limited range (`tv`) or full range (`pc`), with the
 * colour matrix that it names. One that names no matrix in the limited range is taken as BT.709, and
 * the copy says so.
 */
export type CodeRange =
  | 'limited'
  | 'limited-unnamed'
  | 'full-bt709'
  | 'full-bt601'
  | 'full-unnamed';

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
  const range = codeRange.startsWith('full') ? ['scale=in_range=full:out_range=full'] : [];
  return [...turnFilters(turn), ...range];
}

const TAGS: Readonly<Record<CodeRange, string>> = {
  limited: '',
  'limited-unnamed': ' -color_range tv -colorspace bt709 -color_primaries bt709 -color_trc bt709',
  // The scaler of some versions drops the name of the matrix.
  'full-bt709': ' -colorspace bt709',
  'full-bt601': ' -colorspace smpte170m',
  'full-unnamed': '',
};

/** Options that put the colour tags on the copy where they would be missing; begins with a space. */
export function tagOptions({ codeRange }: RecordedPicture): string {
  return TAGS[codeRange];
}

/**
 * FFV1 version 3, every picture on its own, sixteen slices with a checksum in each: a damaged byte is
 * noticed on reading and spoils a sixteenth of one picture.
 */
export const LOSSLESS = '-c:v ffv1 -level 3 -g 1 -slices 16 -slicecrc 1';
