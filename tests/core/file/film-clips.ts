import { bandMotionOfPictures, type BandMotion } from '../../../src/core/file/band-motion.ts';
import { filmPosition } from '../../../src/core/file/film-position.ts';
import type { RecordingBench } from '../../../src/core/file/recording-bench.ts';
import {
  measuredKeepList,
  type MeasuredKeepList,
} from '../../../src/core/file/measured-keep-list.ts';
import { makeProjectorShutter } from '../../../src/core/gate/shutter.ts';
import {
  drawPlan,
  filmClip,
  type ClipPlan,
  type FilmClip,
} from '../../tools/film-clip/film-clip.ts';

/**
 * Clips by which the reading of a recording is accepted. The first 40 seeds were set down before
 * anything was tuned, fourteen more when some of them turned out to be benches that are refused; tuning
 * looked at seeds from 1000 on only.
 */
export const ACCEPTANCE_SEEDS: readonly number[] = Array.from({ length: 54 }, (_, at) => 1 + at);

/**
 * Seeds set down after flicker was taken into the models of a phase, before any of them was run.
 */
export const LATER_SEEDS: readonly number[] = Array.from({ length: 20 }, (_, at) => 7001 + at);

/** What the reader may have entered wrong. */
export interface WrongEntries {
  readonly rate?: number;
  readonly exposure?: number;
  readonly readout?: number;
}

const NOMINAL_RATES = [16, 50 / 3, 18, 24];

/** The bench as a reader would enter it: the nominal film rate, the blades of the projector. */
export function enteredBench(
  { projector, camera, flashes, open, pulldown }: ClipPlan,
  { rate = 1, exposure = 1, readout = 1 }: WrongEntries = {},
): RecordingBench {
  const nominal = NOMINAL_RATES.reduce((best, each) =>
    Math.abs(each - projector.filmFps) < Math.abs(best - projector.filmFps) ? each : best,
  );
  return {
    filmFps: nominal * rate,
    shutter: makeProjectorShutter(flashes, open, flashes > 1 ? pulldown * 360 : undefined),
    exposureSeconds: camera.exposureSeconds * exposure,
    readoutSeconds: camera.readoutSeconds * readout,
  };
}

/** Hardly more camera frames than film frames: many a frame holds two film frames half and half. */
export function isNearCameraRate({ projector, camera }: ClipPlan): boolean {
  const swing = projector.swings.reduce((sum, { share }) => sum + share, 0);
  return (projector.filmFps / camera.cameraFps) * (1 + swing) > 0.89;
}

export interface ReadClip {
  readonly clip: FilmClip;
  readonly motion: BandMotion;
}

export function clipOf(seed: number, seconds?: number): ReadClip {
  const clip = filmClip(drawPlan(seed, seconds), seed);
  return { clip, motion: bandMotionOfPictures(clip.pictures, clip.frameSeconds) };
}

/** Reads a clip; the reason where it is refused. */
export function readClip(
  { clip, motion }: ReadClip,
  wrong?: WrongEntries,
): { readonly list: MeasuredKeepList; readonly filmFps: number } | string {
  const bench = enteredBench(clip.plan, wrong);
  const position = filmPosition(motion, bench);
  if (position.kind === 'refused') return position.reason;
  return { list: measuredKeepList(position, motion, bench), filmFps: position.filmFps };
}
