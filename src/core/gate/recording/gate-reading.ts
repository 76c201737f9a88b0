// What a recording of the lit, empty gate tells, as data.
import type { Advice } from '../setting-advice.ts';
import type { Shutter } from '../shutter.ts';

/** What the reader knows of the bench. What was not measured is left out. */
export interface GateBench {
  /** Film rate by dial or stopwatch, frames/s. */
  readonly nominalFilmFps: number;
  /** How far the film rate may be from it, share; 0.06 when left out. */
  readonly filmRateShare?: number;
  readonly flashesPerFrame: number;
  readonly shutter: Shutter;
  /** Exposure time that the clip was recorded with, s. */
  readonly exposureSeconds: number;
  /** Readout time, s; 0 only for a proven global shutter. */
  readonly readoutSeconds?: number | undefined;
  /** Mains rate, Hz; both 50 and 60 are tried when left out. */
  readonly mainsHz?: number | undefined;
  readonly rippleLimitPercent: number;
  /** The camera reads its last coded row first, as one that flips the picture by itself does. */
  readonly isReadUpwards?: boolean;
}

/** What makes the light change. */
export type GateCause = 'shutter' | 'unequal' | 'lamp' | 'automatic-exposure' | 'drift';

/** A cause that was found, with the change that it makes by itself. */
export interface FoundCause {
  readonly cause: GateCause;
  /** Change of light by this cause alone, peak to peak, % of the mean. */
  readonly ripplePercent: number;
  /** Part of the sum of all causes, 0–1. */
  readonly share: number;
}

/** A film rate with what is known of it. */
export interface MeasuredFilmRate {
  /** Mean over the clip, frames/s. */
  readonly filmFps: number;
  /** The true mean lies within this, either way, frames/s, in at least 95 of 100 clips. */
  readonly errorFps: number;
  /** Slowest and fastest over one second, frames/s: what the motor did meanwhile. */
  readonly slowestFps: number;
  readonly fastestFps: number;
}

/** Film rate at one moment, for a chart. */
export interface SpeedPoint {
  readonly seconds: number;
  readonly filmFps: number;
}

export interface MeasuredRipple {
  /** Shutter, blades and lamp together, peak to peak, % of the mean. */
  readonly percent: number;
  /** The same in stops; undefined where some rows get no light. */
  readonly stops: number | undefined;
  /** True when the clip does not show every phase, so that there may be more. */
  readonly isAtLeast: boolean;
}

/** What to change. */
export interface GateAdvice {
  /**
   * For a cause in shutter, exposure and speed: the complete setting nearest to what is set. Undefined
   * where the light shows unequal blades that the bench describes as alike: then no setting found for
   * blades alike would hold.
   */
  readonly setting: Advice | undefined;
  /** Stops of light that the new exposure gains (+) or loses (−). */
  readonly exposureStops: number | undefined;
  /** Film rate at which the exposure in use would match, where a projector can be nudged there. */
  readonly matchingFilmFps: number | undefined;
  /**
   * Exposure of one whole film frame, s: the only one that unequal blades leave even, at the price of
   * camera frames that blend two film frames. Undefined where it does not fit into a camera frame.
   */
  readonly wholeFilmFrameSeconds: number | undefined;
}

export interface GateReading {
  readonly kind: 'reading';
  readonly cameraFps: number;
  /** Camera frames that the clock counts and the file does not hold. */
  readonly missingFrames: number;
  readonly durationSeconds: number;
  /** Undefined when nothing in the light turns with the film. */
  readonly filmRate: MeasuredFilmRate | undefined;
  readonly flashRateHz: number | undefined;
  /** Signed beat between flash rate and camera rate, Hz. */
  readonly beatHz: number | undefined;
  readonly ripple: MeasuredRipple;
  /** True when nothing changes the light by as much as anybody could see. */
  readonly isEven: boolean;
  /** A flicker larger than this, either way, would have been found, % of the mean. */
  readonly quietPercent: number;
  readonly readoutSeconds: number | undefined;
  readonly readoutErrorSeconds: number | undefined;
  readonly bandsDownPicture: number | undefined;
  /** Picture heights per second, positive upwards; undefined for a global shutter. */
  readonly bandDriftPerSecond: number | undefined;
  readonly speed: readonly SpeedPoint[];
  /** The largest first; empty when there is no flicker. */
  readonly causes: readonly FoundCause[];
  readonly advice: GateAdvice;
}

/** Why a recording is not read. */
export type GateRefusalReason =
  | 'too-short'
  | 'clipped'
  | 'black'
  | 'something-moves'
  | 'irregular-times'
  | 'two-answers'
  | 'slow-beat'
  | 'unexplained';

/** One of two answers that a recording leaves open. */
export interface PossibleAnswer {
  readonly cause: GateCause;
  readonly filmFps: number | undefined;
}

/** A recording that is not read, with the reason and the place in it. */
export interface GateRefusal {
  readonly kind: 'refusal';
  readonly reason: GateRefusalReason;
  /** Where in the clip, s from its start; undefined where it concerns all of it. */
  readonly seconds: number | undefined;
  /** Where in the picture, band counted from the first coded row; undefined where it concerns all. */
  readonly band: number | undefined;
  /** Both answers, when two are possible. */
  readonly answers: readonly PossibleAnswer[];
  /** How much: seconds of the clip, share of the samples, or share of the light that moved. */
  readonly amount: number | undefined;
}
