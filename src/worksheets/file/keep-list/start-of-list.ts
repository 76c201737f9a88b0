import { isSureFilmFrame, type KeepBench, type KeepTrust } from '../../../core/file/keep-drift.ts';
import { cameraFrameInReel, type KeepReel } from '../../../core/file/keep-ties.ts';
import { makeGateLight } from '../../../core/gate/gate-light.ts';
import { cameraFramePurity, type CameraFramePurity } from '../../../core/gate/purity.ts';
import { shutterOf } from '../../gate/shutter-inputs.ts';
import type { KeepEntries } from './inputs.ts';

/** Camera frames listed and drawn, from the first kept one on. */
const SHOWN = 18;

/** Exposure and readout over more film frames than this hold no whole frame anywhere. */
const MOST_FILM_FRAMES_EXPOSED = 3;

/** A camera frame as it is when film rate and start are exactly as typed. */
export interface ListedCameraFrame {
  readonly cameraFrame: number;
  readonly purity: CameraFramePurity;
  /** Whether the film frame that it is kept for is sure; undefined for one that is not kept. */
  readonly kept: 'sure' | 'unsure' | undefined;
}

/**
 * What the first camera frames of a keep list hold, and which of them are kept.
 *
 * @param listFps  film rate that the first stretch of the list stands for, frames/s
 * @returns the camera frames; none where there is no whole one to list
 */
export function startOfList(
  entries: KeepEntries,
  bench: KeepBench,
  reel: KeepReel,
  trust: KeepTrust,
  listFps: number,
): readonly ListedCameraFrame[] {
  const { exposureSeconds, cameraFps, firstCameraFrame, filmFps } = entries;
  const { readoutSeconds } = bench;
  if ((exposureSeconds + readoutSeconds) * filmFps >= MOST_FILM_FRAMES_EXPOSED) return [];
  const light = makeGateLight(listFps, shutterOf(entries));
  const middle = 0.5 / listFps - (exposureSeconds + readoutSeconds) / 2;
  const firstKept = cameraFrameInReel(reel, 0);
  const kept = new Map<number, 'sure' | 'unsure'>();
  for (let filmFrame = 0; filmFrame < Math.min(SHOWN, reel.filmFrames); filmFrame += 1) {
    const trusted = isSureFilmFrame(trust, filmFrame) ? 'sure' : 'unsure';
    kept.set(cameraFrameInReel(reel, filmFrame), trusted);
  }
  return Array.from({ length: SHOWN }, (_, index) => {
    const cameraFrame = firstKept + index;
    const start = middle + (cameraFrame - firstCameraFrame) / cameraFps;
    const purity = cameraFramePurity(light, start, exposureSeconds, readoutSeconds);
    return { cameraFrame, purity, kept: kept.get(cameraFrame) };
  });
}
