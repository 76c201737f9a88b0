// What core says about unequal blades, and the sentence and tables made from it.
import { beatHz } from '../core/beat.ts';
import { fitsCameraFrame } from '../core/exposure.ts';
import { makeGateLight } from '../core/gate-light.ts';
import { formatExposure, formatNumber, formatQuantity } from '../core/quantity/format.ts';
import { exposureRipple } from '../core/ripple.ts';
import { shutterOpenFraction } from '../core/shutter.ts';
import { shutterFromArcs, slowPulsations } from '../core/unequal-blades.ts';
import type { Outcome, ResultTable } from './types.ts';

/** Ripple that is hard to see in a moving picture, %; common practice. */
export const RIPPLE_LIMIT_PERCENT = 2;

/** The inputs of the worksheet. */
export interface Settings {
  readonly filmFps: number;
  readonly bladeDegrees: readonly number[];
  readonly openDegrees: readonly number[];
  readonly turnsPerFrame: number;
  readonly cameraFps: number;
}

export function blades(settings: Settings) {
  const { filmFps, bladeDegrees, openDegrees, turnsPerFrame, cameraFps } = settings;
  const shutter = shutterFromArcs(bladeDegrees, openDegrees, turnsPerFrame);
  const light = makeGateLight(filmFps, shutter);
  const flashes = shutter.sectors.length;
  const flashSeconds = 1 / (filmFps * flashes);
  const turnHz = filmFps * turnsPerFrame;
  return {
    light,
    flashes,
    flashSeconds,
    turnHz,
    openFraction: shutterOpenFraction(shutter),
    ripple: exposureRipple(light, flashSeconds),
    pulsations: slowPulsations(light, filmFps, turnsPerFrame, flashes, cameraFps, flashSeconds),
    shownHz: Math.abs(beatHz(turnHz, cameraFps)),
    doesTurnFit: fitsCameraFrame(1 / turnHz, cameraFps),
    sumDegrees: [...bladeDegrees, ...openDegrees].reduce((sum, degrees) => sum + degrees, 0),
  };
}

export type Blades = ReturnType<typeof blades>;

export function verdictOf(found: Blades, cameraFps: number): Outcome['verdict'] {
  const { ripple, flashSeconds, turnHz, shownHz, doesTurnFit } = found;
  const flash = formatExposure(flashSeconds);
  if (ripple.percent < 0.05) {
    return {
      level: 'good',
      sentence: `These blades act as equal ones: one flash, ${flash}, leaves no ripple.`,
    };
  }
  const turn = formatExposure(1 / turnHz);
  const pulse = shownHz === 0 ? 'standing still' : `${formatNumber(shownHz, 3)} times a second`;
  const cure = doesTurnFit
    ? `${turn}, one turn of the shutter, ends it`
    : `only ${turn}, one turn of the shutter, would end it, and that does not fit into a camera frame at ${formatNumber(cameraFps, 4)} frames/s`;
  return {
    level: ripple.percent <= RIPPLE_LIMIT_PERCENT ? 'care' : 'stop',
    sentence: `The blades are unequal: at one flash, ${flash}, a ripple of ${formatQuantity(ripple.percent, 'percent', 3)} remains, ${pulse}; ${cure}.`,
  };
}

export function pulsationTable({ pulsations, flashSeconds }: Blades): ResultTable {
  return {
    caption: `What an exposure of ${formatExposure(flashSeconds)} leaves, part by part`,
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
