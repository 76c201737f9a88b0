// What the handbook knows about one film gauge, each value with its source and how it was read.

/** Key of a gauge in worksheets, links and the bench description. */
export type GaugeId = '8mm-type-r' | 'super-8' | '9.5mm' | '16mm' | 'super-16' | '35mm';

/**
 * How a value was read: `seen` in the publication itself, `secondary` in a page that quotes it,
 * `memory` not verified (print it as approximate), `derived` by arithmetic from other values,
 * `practice` usage of the trade without a source.
 */
export type SourceStatus = 'seen' | 'secondary' | 'memory' | 'derived' | 'practice';

/** A value's origin: an id of content/sources.yaml and how it was read there. */
export interface Provenance {
  readonly source: string;
  readonly status: SourceStatus;
  readonly note?: string;
}

/** A length in mm with its tolerance, as printed, and its origin. */
export interface SourcedMillimetres extends Provenance {
  readonly millimetres: number;
  readonly toleranceMillimetres?: number;
}

/** Distance from one perforation to the next, new film, as printed. */
export interface Pitch extends SourcedMillimetres {
  /** The same pitch as printed in inches; absent where no inch value is known. */
  readonly inches?: number;
  /** Length of 100 consecutive pitches, more exact than 100 times the rounded pitch. */
  readonly hundredPitches: SourcedMillimetres;
}

/** Where a worker finds the holes. */
export type PerforationPosition =
  | 'one-edge-beside-picture'
  | 'one-edge-at-frame-line'
  | 'centre-at-frame-line'
  | 'both-edges-at-frame-line'
  | 'both-edges-four-per-frame';

export interface Perforation {
  readonly width: SourcedMillimetres;
  readonly height: SourcedMillimetres;
  /** From the film edge to the near side of the hole; absent for a hole in the middle. */
  readonly edgeDistance?: SourcedMillimetres;
  /** The first is the one drawn; a gauge may come with one row or two. */
  readonly positions: readonly PerforationPosition[];
  readonly positionOrigin: Provenance;
}

export interface PictureSize extends Provenance {
  readonly widthMillimetres: number;
  readonly heightMillimetres: number;
}

/** What sound a film carries, as far as the eye can tell. */
export type FilmSound = 'none' | 'magnetic' | 'optical';

/** A film rate at which this gauge was shot. */
export interface NativeRate extends Provenance {
  readonly filmFps: number;
  /** Tolerance of the rate where a standard prints one, frames/s. */
  readonly toleranceFps?: number;
  readonly use: string;
  /** What films of this rate may carry. Of the rates for one sound the first is tried first. */
  readonly sounds: readonly FilmSound[];
}

/** A sound record on the film: how far ahead of its picture, and where it lies. */
export interface SoundTrack extends Provenance {
  readonly system: Exclude<FilmSound, 'none'>;
  /** Frames by which the sound is ahead of its picture in the direction of travel. */
  readonly framesAhead: number;
  /** Width to draw and its near distance from the edge without perforations (or the named edge). */
  readonly width?: SourcedMillimetres;
  readonly place?: {
    readonly edge: 'perforated' | 'far';
    readonly edgeDistanceMillimetres: number;
  };
}

export interface Gauge {
  readonly id: GaugeId;
  /** Name in running text. */
  readonly name: string;
  readonly filmWidth: SourcedMillimetres;
  readonly perforationsPerFrame: number;
  readonly pitch: { readonly long: Pitch; readonly short?: Pitch };
  /** The counting convention of rulers, counters and tables. */
  readonly framesPerFoot: Provenance & { readonly frames: number };
  readonly perforation: Perforation;
  /** Picture exposed by a camera; the first is the recommended value, others are printed elsewhere. */
  readonly cameraPicture: readonly [PictureSize, ...PictureSize[]];
  /** Picture shown by a projector; empty where the gauge is not projected. */
  readonly projectedPicture: readonly PictureSize[];
  readonly nativeRates: readonly NativeRate[];
  readonly soundTracks: readonly SoundTrack[];
}

/**
 * A length read in the publication itself.
 *
 * @returns the length with its source and status
 */
export function seen(
  millimetres: number,
  source: string,
  extras: { readonly toleranceMillimetres?: number; readonly note?: string } = {},
): SourcedMillimetres {
  return { millimetres, source, status: 'seen', ...extras };
}

/**
 * A length from memory, to be printed as approximate.
 *
 * @returns the length with its source and status
 */
export function remembered(millimetres: number, note: string): SourcedMillimetres {
  return { millimetres, source: 'from-memory', status: 'memory', note };
}

/**
 * A length that follows from other values by arithmetic.
 *
 * @returns the length with its source and status
 */
export function derived(
  millimetres: number,
  note: string,
  toleranceMillimetres?: number,
): SourcedMillimetres {
  return {
    millimetres,
    source: 'arithmetic',
    status: 'derived',
    note,
    ...(toleranceMillimetres === undefined ? {} : { toleranceMillimetres }),
  };
}
