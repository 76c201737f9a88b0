import type { SoundFound } from './read/sound.ts';
import type { ReadOutcome, ReadProgress, ReadRequest } from './read/reading.ts';
import type { ReadRefusal } from './read/read-refusals.ts';
import type { RecordingFacts } from './read/recording-facts.ts';

/** What the reading worker is asked. It answers one after the other. */
export type ReadingTask =
  | { readonly task: 'read'; readonly file: Blob; readonly request: ReadRequest }
  | {
      readonly task: 'sound';
      readonly file: Blob;
      readonly fromSeconds: number;
      readonly seconds: number;
    }
  | {
      readonly task: 'open-pictures';
      readonly file: Blob;
      readonly width: number;
      /** Time of every camera frame, s; found anew where left out. */
      readonly frameSeconds?: Float64Array;
    }
  | { readonly task: 'picture'; readonly cameraFrame: number }
  | { readonly task: 'start-film'; readonly cameraFrames: Float64Array }
  | { readonly task: 'next-picture' };

/** One picture for a strip or a player. */
export interface FramePicture {
  readonly cameraFrame: number;
  /** As coded: turn it by `rotationDegrees` of the facts on showing, and close it afterwards. */
  readonly bitmap: ImageBitmap;
}

/** What the reading worker says. */
export type ReadingAnswer =
  | { readonly answer: 'progress'; readonly progress: ReadProgress }
  | { readonly answer: 'read'; readonly outcome: ReadOutcome }
  | { readonly answer: 'sound'; readonly found: SoundFound }
  | {
      readonly answer: 'pictures-open';
      readonly facts: RecordingFacts;
      readonly frameCount: number;
    }
  | { readonly answer: 'film-started' }
  /** Undefined after the last picture, or where a frame does not exist. */
  | { readonly answer: 'picture'; readonly picture: FramePicture | undefined }
  | { readonly answer: 'refused'; readonly refusal: ReadRefusal };
