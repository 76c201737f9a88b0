import type { Shutter } from '../gate/shutter.ts';

/** The bench that a recording of film was made on, as far as it is known. */
export interface RecordingBench {
  /** Film rate, frames/s; found in the recording if it is right to 4 %. */
  readonly filmFps: number;
  readonly shutter: Shutter;
  /** Exposure time, s; the count stays right while it is right to 25 %. */
  readonly exposureSeconds: number;
  /** Time from the first row to the last, s; 0 where it is not known: then it is looked for. */
  readonly readoutSeconds: number;
}
