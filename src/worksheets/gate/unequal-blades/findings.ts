// What core says about unequal blades, and the sentence and tables made from it.
import { beatHz } from '../../../core/gate/beat.ts';
import { fitsCameraFrame } from '../../../core/gate/exposure.ts';
import { makeGateLight } from '../../../core/gate/gate-light.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { exposureRipple } from '../../../core/gate/ripple.ts';
import { shutterOpenFraction } from '../../../core/gate/shutter.ts';
import { shutterFromArcs, slowPulsations } from '../../../core/gate/unequal-blades.ts';
import { requireWithinCameraFrame } from '../camera-frame-limits.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';
import type { Settings } from './inputs.ts';

/** Below this, %, a ripple prints as none. */
const NO_RIPPLE_PERCENT = 0.05;

/** How the light pulses behind these blades at the exposure time set, or at one flash. */
export function findBlades(settings: Settings) {
  const { filmFps, bladeDegrees, openDegrees, turnsPerFrame, cameraFps } = settings;
  const shutter = shutterFromArcs(
    bladeDegrees,
    openDegrees,
    turnsPerFrame,
    settings.edgeWipeDegrees,
  );
  const light = makeGateLight(filmFps, shutter);
  const flashes = shutter.sectors.length;
  const flashSeconds = 1 / (filmFps * flashes);
  const turnHz = filmFps * turnsPerFrame;
  const exposureSeconds = settings.exposureSeconds ?? flashSeconds;
  // One flash may be longer than a camera frame, and then says so; a typed time may not.
  if (settings.exposureSeconds !== undefined) requireWithinCameraFrame(cameraFps, exposureSeconds);
  const ripple = exposureRipple(light, exposureSeconds);
  return {
    exposureSeconds,
    isOneFlash: Math.abs(exposureSeconds / flashSeconds - 1) < 1e-9,
    light,
    flashes,
    flashSeconds,
    doesFlashFit: fitsCameraFrame(flashSeconds, cameraFps),
    turnHz,
    doesTurnFit: fitsCameraFrame(1 / turnHz, cameraFps),
    openFraction: shutterOpenFraction(shutter),
    ripple,
    rippleAtTurnPercent: exposureRipple(light, 1 / turnHz).percent,
    pulsations: slowPulsations(light, filmFps, turnsPerFrame, flashes, cameraFps, exposureSeconds),
    shownHz: Math.abs(beatHz(turnHz, cameraFps)),
    sumDegrees: [...bladeDegrees, ...openDegrees].reduce((sum, degrees) => sum + degrees, 0),
    /** Exposures of whole flashes, from one to all flashes of a turn. */
    matches: bladeDegrees.map((_, index) => {
      const seconds = (index + 1) * flashSeconds;
      return {
        seconds,
        ripplePercent: exposureRipple(light, seconds).percent,
        isPossible: fitsCameraFrame(seconds, cameraFps),
      };
    }),
  };
}

export type Blades = ReturnType<typeof findBlades>;

/** “one flash, 1/54 s” or the time that was typed. */
export function exposureWords({ exposureSeconds, isOneFlash }: Blades): string {
  const time = formatExposure(exposureSeconds);
  return isOneFlash ? `one flash, ${time}` : time;
}

export function verdictOf(
  found: Blades,
  { cameraFps, filmFps, rippleLimitPercent }: Settings,
): Outcome['verdict'] {
  const { ripple, turnHz, shownHz, doesTurnFit, isOneFlash } = found;
  if (ripple.percent < NO_RIPPLE_PERCENT) {
    return {
      level: 'good',
      sentence: isOneFlash
        ? `These blades act as equal ones: ${exposureWords(found)}, leaves no ripple.`
        : `At ${exposureWords(found)} these blades leave no ripple.`,
    };
  }
  const turn = formatExposure(1 / turnHz);
  const pulse = shownHz === 0 ? 'standing still' : `${formatNumber(shownHz, 3)} times a second`;
  const percent = formatQuantity(ripple.percent, 'percent', 3);
  // An exposure as long as a film frame holds parts of two, however the camera is set.
  const price =
    turnHz <= filmFps ? ', but so long an exposure blends neighbouring film frames' : '';
  const cure = doesTurnFit
    ? `${turn}, one turn of the shutter, ends it${price}`
    : `only ${turn}, one turn of the shutter, would end it, and that does not fit into a camera frame at ${formatNumber(cameraFps, 4)} frames/s`;
  const level = ripple.percent <= rippleLimitPercent ? 'care' : 'stop';
  return {
    level,
    sentence: isOneFlash
      ? `The blades are unequal: at ${exposureWords(found)}, a ripple of ${percent} remains, ${pulse}; ${cure}.`
      : `At ${exposureWords(found)} these blades leave a ripple of ${percent}; ${cure}.`,
  };
}

export function pulsationTable({ pulsations, exposureSeconds }: Blades): ResultTable {
  return {
    caption: `What an exposure of ${formatExposure(exposureSeconds)} leaves, part by part`,
    columns: ['In the gate', 'In the recording', 'Ripple of this part'],
    rows: pulsations.map(({ lightHz, shownHz, ripplePercent }) => ({
      cells: [
        formatQuantity(lightHz, 'Hz', 4),
        shownHz === 0 ? 'standing' : formatQuantity(shownHz, 'Hz', 3),
        formatQuantity(ripplePercent, 'percent', 2),
      ],
    })),
  };
}

export function matchTable({ matches }: Blades, cameraFps: number): ResultTable {
  return {
    caption: 'Ripple of exposures of whole flashes',
    columns: ['Flashes', 'Exposure time', 'Ripple', `Fits ${formatNumber(cameraFps, 4)} frames/s`],
    rows: matches.map(({ seconds, ripplePercent, isPossible }, index) => ({
      cells: [
        String(index + 1),
        formatExposure(seconds),
        formatQuantity(ripplePercent, 'percent', 3),
        isPossible ? 'yes' : 'no',
      ],
    })),
  };
}
