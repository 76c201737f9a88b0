import type { FilmFaults } from '../gate/film-faults.ts';
import type { BenchNumbers } from '../camera/setting.ts';
import type { Tone } from '../camera/tone.ts';
import type { FileWay, View } from '../camera/views.ts';

/** Middle of what the loupe shows, shares of the picture's width and height. */
export interface LoupePlace {
  readonly x: number;
  readonly y: number;
}

/** A fault as a picture: what is changed on a bench where all is well, and where it shows best. */
export interface Look {
  /** What it is called, as a line of a list. */
  readonly name: string;
  readonly film?: Partial<FilmFaults>;
  readonly bench?: Partial<BenchNumbers>;
  readonly tone?: Partial<Tone>;
  readonly file?: Partial<FileWay>;
  /** Where it is seen; where left out, the camera file if the bench is changed, else the kept frames. */
  readonly view?: View;
  /** Film frame at which it shows best; 60 when left out. */
  readonly filmFrame?: number;
  /** The picture near that one which holds most of a second film frame. */
  readonly isMostBlended?: true;
  /** Play before the picture is taken, s: a wrong speed shows in how far the boat has come. */
  readonly afterSeconds?: number;
  /** What does not show in one whole still: it wants strips, or the loupe. */
  readonly wants?: 'strips' | 'loupe';
  /** Where the loupe is held, shares of width and height. */
  readonly loupeAt?: LoupePlace;
  /** Place of the line to the picture beside it, share of the width; half when left out. */
  readonly split?: number;
}

/**
 * A bench on which all is well: three flashes at 18 frames/s, one flash in each exposure, and every film
 * frame sure of a whole camera frame.
 */
export const SOUND_BENCH: BenchNumbers = {
  filmFps: 18,
  flashesPerFrame: 3,
  openFraction: 0.5,
  cameraFps: 50,
  exposureSeconds: 1 / 54,
  readoutSeconds: 0.016,
};
