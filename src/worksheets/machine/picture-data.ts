/**
 * What a worksheet hands to a picture: core results in physical units, ready to draw. Pictures do no
 * arithmetic of the trade; they scale these numbers to the page. One member per file in src/pictures.
 */

/** Gate light over time with the exposure windows of consecutive camera frames. */
export interface GateLightData {
  readonly name: 'gate-light';
  readonly alternative: string;
  /** Length of the stretch drawn, s. */
  readonly spanSeconds: number;
  /** Breakpoints of the light, level 0…1, in time order from 0 to spanSeconds. */
  readonly light: readonly { readonly seconds: number; readonly level: number }[];
  /** Starts of film frames, s. */
  readonly filmFrameStarts: readonly number[];
  /** Exposure windows of the first row, in order; `share` is light relative to the mean. */
  readonly exposures: readonly {
    readonly startSeconds: number;
    readonly endSeconds: number;
    readonly share: number;
  }[];
}

/** The recorded picture with its bands, for a still and a moving view. */
export interface BandsData {
  readonly name: 'bands';
  readonly alternative: string;
  /** Exposure against flash phase, one flash-pattern period in equal steps, mean 1. */
  readonly exposureByPhase: readonly number[];
  /** Pattern periods seen down the picture (0 for a global shutter). */
  readonly periodsDownPicture: number;
  /** Change of phase from one camera frame to the next, in pattern periods, −0.5…0.5. */
  readonly phaseStepPerFrame: number;
  readonly cameraFps: number;
}

/** Which film frame each camera frame holds, and how pure it is. */
export interface WholeFramesData {
  readonly name: 'whole-frames';
  readonly alternative: string;
  /**
   * Consecutive camera frames: main film frame, its share of the light (0…1), the film frame that
   * gives the rest, and the share of rows without any light (both left out when there are none).
   */
  readonly cameraFrames: readonly {
    readonly filmFrame: number;
    readonly purity: number;
    readonly otherFilmFrame?: number | undefined;
    readonly darkRows?: number | undefined;
  }[];
}

/** How often each film frame is shown on a delivery timeline. */
export interface RepeatPatternData {
  readonly name: 'repeat-pattern';
  readonly alternative: string;
  /** Repeats of consecutive film frames; 0 where a frame is lost. */
  readonly repeats: readonly number[];
}

/** One frame of film in mm, perforated edge left. */
export interface FilmShape {
  readonly widthMillimetres: number;
  readonly pitchMillimetres: number;
  readonly perforations: readonly {
    readonly leftMillimetres: number;
    readonly widthMillimetres: number;
    readonly heightMillimetres: number;
    /** Centre below the top of its frame cell, mm. */
    readonly centreMillimetres: number;
  }[];
  readonly picture: {
    readonly leftMillimetres: number;
    readonly widthMillimetres: number;
    readonly heightMillimetres: number;
    readonly centreMillimetres: number;
  };
  /** Sound records along the film. */
  readonly stripes: readonly {
    readonly system: 'magnetic' | 'optical';
    readonly leftMillimetres: number;
    readonly widthMillimetres: number;
  }[];
}

/** A strip of film drawn to scale with its dimensions. */
export interface FilmStripData extends FilmShape {
  readonly name: 'film-strip';
  readonly alternative: string;
}

/** One film of a picture that compares several. */
export interface FilmBesideOthers {
  /** Short lines: they stand under a narrow strip. */
  readonly label: readonly string[];
  /** Marked as one that fits. */
  readonly isMarked: boolean;
  readonly film: FilmShape;
}

/** Films of several gauges side by side at one scale, in rows, and one that stands apart. */
export interface FilmGaugesData {
  readonly name: 'film-gauges';
  readonly alternative: string;
  readonly rows: readonly (readonly FilmBesideOthers[])[];
  readonly apart?: FilmBesideOthers;
}

/** A plain line chart: one or more curves over one quantity. */
export interface CurveData {
  readonly name: 'curve';
  readonly alternative: string;
  readonly xLabel: string;
  readonly yLabel: string;
  readonly curves: readonly {
    readonly label: string;
    readonly points: readonly { readonly x: number; readonly y: number }[];
  }[];
  /** Vertical marks, for instance the reader's own setting. */
  readonly marks: readonly { readonly x: number; readonly label: string }[];
}

/** The shutter seen along its shaft, one turn. */
export interface ShutterDiscData {
  readonly name: 'shutter-disc';
  readonly alternative: string;
  /** Sectors in the order in which they pass the gate; together a full turn of 360°. */
  readonly sectors: readonly {
    readonly degrees: number;
    readonly kind: 'blade' | 'pulldown-blade' | 'opening';
  }[];
}

/** Where along the film the sound of the picture in the gate lies, and where it is read. */
export interface SoundStripData {
  readonly name: 'sound-strip';
  readonly alternative: string;
  /** Frames from the gate to the sound of its picture, the way the film runs. */
  readonly separationFrames: number;
  readonly separationText: string;
  /** Frames from the gate to the place where sound is read, the way the film runs. */
  readonly readFrames: number;
  readonly readText: string;
  /** What lies between sound and reader; empty when they meet. */
  readonly gapText: string;
}

/** A range, and how much of it other ranges hold. */
export interface RangeBarsData {
  readonly name: 'range-bars';
  readonly alternative: string;
  readonly unit: string;
  readonly whole: { readonly label: string; readonly from: number; readonly to: number };
  readonly parts: readonly {
    readonly label: string;
    readonly from: number;
    readonly to: number;
  }[];
  /** What the hatch means where a part misses something, for instance `lost`. */
  readonly missedText: string;
}

export type PictureData =
  | GateLightData
  | BandsData
  | WholeFramesData
  | RepeatPatternData
  | FilmStripData
  | FilmGaugesData
  | CurveData
  | ShutterDiscData
  | SoundStripData
  | RangeBarsData;
