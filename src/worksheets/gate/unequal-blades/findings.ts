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

/** The inputs of the worksheet. */
export interface Settings {
  readonly filmFps: number;
  readonly bladeDegrees: readonly number[];
  readonly openDegrees: readonly number[];
  readonly turnsPerFrame: number;
  readonly edgeWipeDegrees: number | undefined;
  readonly cameraFps: number;
  /** Undefined for an exposure of one flash. */
  readonly exposureSeconds: number | undefined;
  readonly rippleLimitPercent: number;
}

export function blades(settings: Settings) {
  const { filmFps, bladeDegrees, openDegrees, turnsPerFrame, cameraFps } = settings;
  const wipe = settings.edgeWipeDegrees;
  const shutter = shutterFromArcs(bladeDegrees, openDegrees, turnsPerFrame, wipe);
  const light = makeGateLight(filmFps, shutter);
  const flashes = shutter.sectors.length;
  const flashSeconds = 1 / (filmFps * flashes);
  const turnHz = filmFps * turnsPerFrame;
  const exposureSeconds = settings.exposureSeconds ?? flashSeconds;
  // One flash may be longer than a camera frame, and then says so; a typed time may not.
  if (settings.exposureSeconds !== undefined) requireWithinCameraFrame(cameraFps, exposureSeconds);
  return {
    exposureSeconds,
    isOneFlash: Math.abs(exposureSeconds / flashSeconds - 1) < 1e-9,
    light,
    flashes,
    flashSeconds,
    turnHz,
    openFraction: shutterOpenFraction(shutter),
    ripple: exposureRipple(light, exposureSeconds),
    pulsations: slowPulsations(light, filmFps, turnsPerFrame, flashes, cameraFps, exposureSeconds),
    shownHz: Math.abs(beatHz(turnHz, cameraFps)),
    doesTurnFit: fitsCameraFrame(1 / turnHz, cameraFps),
    sumDegrees: [...bladeDegrees, ...openDegrees].reduce((sum, degrees) => sum + degrees, 0),
  };
}

export type Blades = ReturnType<typeof blades>;

/** “one flash, 1/54 s” or the time that was typed. */
function exposureWords({ exposureSeconds, isOneFlash }: Blades): string {
  const time = formatExposure(exposureSeconds);
  return isOneFlash ? `one flash, ${time}` : time;
}

export function verdictOf(
  found: Blades,
  { cameraFps, rippleLimitPercent }: Settings,
): Outcome['verdict'] {
  const { ripple, turnHz, shownHz, doesTurnFit, isOneFlash } = found;
  if (ripple.percent < 0.05) {
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
  const cure = doesTurnFit
    ? `${turn}, one turn of the shutter, ends it`
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

export function matchTable(
  { light, flashSeconds, turnHz }: Blades,
  cameraFps: number,
): ResultTable {
  const flashesPerTurn = Math.round(1 / (turnHz * flashSeconds));
  return {
    caption: 'Ripple of exposures of whole flashes',
    columns: ['Flashes', 'Exposure time', 'Ripple', `Fits ${formatNumber(cameraFps, 4)} frames/s`],
    rows: Array.from({ length: flashesPerTurn }, (_, index) => {
      const seconds = (index + 1) * flashSeconds;
      return {
        cells: [
          String(index + 1),
          formatExposure(seconds),
          formatQuantity(exposureRipple(light, seconds).percent, 'percent', 3),
          fitsCameraFrame(seconds, cameraFps) ? 'yes' : 'no',
        ],
      };
    }),
  };
}
