/** What the colour tags of a file say; parts without a tag are undefined. */
export interface ColourTags {
  readonly matrix: string | undefined;
  readonly primaries: string | undefined;
  readonly transfer: string | undefined;
  /** Full range, 0–255 in 8 bits; limited range, 16–235, where nothing is said. */
  readonly isFullRange: boolean;
  /** Whether the file says its range. */
  readonly isRangeTagged: boolean;
}

/** What a file says about itself before its pictures are read. */
export interface RecordingFacts {
  /** For instance `MP4`, `QuickTime`, `Matroska`. */
  readonly container: string;
  /** Plain name of the coding. */
  readonly codec: string;
  /** Full name of the coding with profile and level, where it is known. */
  readonly codecParameters: string | undefined;
  /** Columns and rows as coded: rows are read out one after the other, whichever way round it is shown. */
  readonly codedWidth: number;
  readonly codedHeight: number;
  /** Clockwise turn with which the picture is shown, degrees. */
  readonly rotationDegrees: 0 | 90 | 180 | 270;
  readonly colour: ColourTags;
  /** Time of the first frame as the file counts, s; not always 0. */
  readonly firstSeconds: number;
  /** From the first frame to the end of the last, s. */
  readonly seconds: number;
  /** Number of frames that the file states or that its length and rate give. */
  readonly expectedFrames: number;
  /** Camera rate by the middle one of the first steps, frames/s. */
  readonly cameraFps: number;
  readonly hasSound: boolean;
  readonly fileBytes: number;
}
