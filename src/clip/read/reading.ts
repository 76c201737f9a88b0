import type { BandLight } from '../../core/gate/band-light.ts';
import type { BandMotion } from '../../core/file/band-motion.ts';
import type { RecordingFacts } from './recording-facts.ts';
import type { ReadRefusal } from './read-refusals.ts';

/** Which part of a recording is read, and for what. */
export interface ReadRequest {
  /** `gate`: light of twelve bands; `film`: motion of twelve bands. */
  readonly want: 'gate' | 'film';
  /** Beginning, s from the first frame; 0 when left out. */
  readonly fromSeconds?: number;
  /** Length, s; to the end when left out. */
  readonly seconds?: number;
}

/** How far a reading has come. */
export interface ReadProgress {
  readonly framesRead: number;
  /** 0 to 1. */
  readonly share: number;
}

/** What every reading tells. */
interface ReadingOfAnyKind {
  readonly facts: RecordingFacts;
  /** Number of the first frame read, counted from 0 in the order shown. */
  readonly firstFrame: number;
  readonly frameCount: number;
  /** Bits of a sample as decoded. */
  readonly bitDepth: number;
  /** Layout of the decoded pictures, for instance `I420` or `NV12`. */
  readonly pictureFormat: string;
  /** Time spent in reading the decoded pictures, without decoding, s. */
  readonly readingSeconds: number;
}

export interface GateReading extends ReadingOfAnyKind {
  readonly kind: 'gate';
  readonly light: BandLight;
}

export interface FilmReading extends ReadingOfAnyKind {
  readonly kind: 'film';
  readonly motion: BandMotion;
}

export type Reading = GateReading | FilmReading;

/** A reading, or the reason why there is none. */
export type ReadOutcome = Reading | { readonly kind: 'refused'; readonly refusal: ReadRefusal };
