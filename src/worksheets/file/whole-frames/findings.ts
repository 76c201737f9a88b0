// What core says about the settings of the whole-frames worksheet.
import { slowestUsualRate } from '../../../core/gate/camera-rates.ts';
import { fitsCameraFrame } from '../../../core/gate/exposure.ts';
import { flashRateHz } from '../../../core/gate/flash-rate.ts';
import {
  commonCycle,
  goodPhaseShare,
  lockedPromise,
  phaseSweepSeconds,
} from '../../../core/gate/frame-ratio.ts';
import { makeGateLight } from '../../../core/gate/gate-light.ts';
import { purityCycle, wholeFrameShare, type PurityCycle } from '../../../core/gate/purity.ts';
import { readoutOrWorst } from '../../../core/gate/readout.ts';
import { longestDarkFraction, pulldownDarkFraction } from '../../../core/gate/shutter.ts';
import {
  longestReadoutSeconds,
  promisesWholeFrames,
  smallestCameraFps,
  wholeFrameWindowSeconds,
} from '../../../core/gate/whole-frames.ts';
import { requireWithinCameraFrame } from '../../gate/camera-frame-limits.ts';
import { shutterOf } from '../../gate/shutter-inputs.ts';
import type { ExactRates, WholeFrameSettings } from './inputs.ts';

/** Film frames of the cycle that no camera frame holds whole; of a cut cycle, those inside the stretch. */
function lostFilmFrames({ frames, filmFramesInCycle, isCut }: PurityCycle): number {
  const whole = frames.filter(({ kind }) => kind === 'whole').map(({ filmFrame }) => filmFrame);
  if (!isCut) return filmFramesInCycle - new Set(whole.map((f) => f % filmFramesInCycle)).size;
  const last = frames.at(-1)?.filmFrame ?? 0;
  const seen = new Set(whole);
  let lost = 0;
  for (let frame = 1; frame < last; frame += 1) if (!seen.has(frame)) lost += 1;
  return lost;
}

/** The purity of the camera frames over one cycle. */
function wholeFrameCycle(settings: WholeFrameSettings, exact: ExactRates): PurityCycle {
  return purityCycle({
    filmRate: exact.filmFps,
    cameraRate: exact.cameraFps,
    shutter: shutterOf(settings),
    exposureSeconds: settings.exposureSeconds,
    readoutSeconds: readoutOrWorst(settings.readoutSeconds, settings.cameraFps),
    phase: settings.phasePercent / 100,
  });
}

/** Smallest sure camera rate when one flash is exposed; undefined when no rate leaves time for it. */
function oneFlashCameraFps(
  settings: WholeFrameSettings,
  closed: number,
  longestDark: number,
): number | undefined {
  const { filmFps, flashesPerFrame, readoutSeconds } = settings;
  const flashSeconds = 1 / flashRateHz(filmFps, flashesPerFrame);
  const smallest = smallestCameraFps(filmFps, closed, flashSeconds, readoutSeconds, longestDark);
  if (smallest === undefined) return undefined;
  const fits =
    fitsCameraFrame(flashSeconds, smallest) && fitsCameraFrame(readoutSeconds ?? 0, smallest);
  return fits ? smallest : undefined;
}

/** Window, promises, ratio and the camera frames of one common cycle. */
export function findWholeFrames(settings: WholeFrameSettings, exact: ExactRates) {
  const { filmFps, cameraFps, exposureSeconds } = settings;
  const readoutSeconds = readoutOrWorst(settings.readoutSeconds, cameraFps);
  requireWithinCameraFrame(cameraFps, exposureSeconds, readoutSeconds);
  const shutter = shutterOf(settings);
  const closed = pulldownDarkFraction(shutter) / filmFps;
  const longestDark = longestDarkFraction(shutter) / filmFps;
  const window = wholeFrameWindowSeconds(
    filmFps,
    closed,
    exposureSeconds,
    readoutSeconds,
    longestDark,
  );
  const smallest = smallestCameraFps(
    filmFps,
    closed,
    exposureSeconds,
    settings.readoutSeconds,
    longestDark,
  );
  const cycle = wholeFrameCycle(settings, exact);
  const ratio = commonCycle(exact.filmFps, exact.cameraFps);
  const filmFramesInCycle = Number(ratio.filmFrames);
  const cameraFramesInCycle = Number(ratio.cameraFrames);
  return {
    closed,
    longestDark,
    /** Measured, or a whole camera frame. */
    readoutSeconds,
    window,
    smallest,
    oneFlash: oneFlashCameraFps(settings, closed, longestDark),
    filmFramesInCycle,
    cameraFramesInCycle,
    cycle,
    lostFilmFrames: lostFilmFrames(cycle),
    hasDarkRows: window === undefined,
    isSure: promisesWholeFrames(window, cameraFps),
    longestReadout: longestReadoutSeconds(filmFps, closed, exposureSeconds, cameraFps, longestDark),
    longRunShare: wholeFrameShare(makeGateLight(filmFps, shutter), exposureSeconds, readoutSeconds),
    goodPhases: goodPhaseShare(filmFramesInCycle, cameraFps, window),
    locked: lockedPromise(filmFramesInCycle, cameraFps, window),
    sweepSeconds: phaseSweepSeconds(filmFramesInCycle, cameraFps, settings.speedErrorPercent),
    betterRate:
      smallest === undefined
        ? undefined
        : slowestUsualRate(smallest, exposureSeconds, settings.readoutSeconds ?? 0),
  };
}

export type WholeFrameFindings = ReturnType<typeof findWholeFrames>;
