// Judges readings of drawn recordings by what is true of them.
import { readEmptyGate } from '../../../../src/core/gate/recording/read-empty-gate.ts';
import type {
  GateBench,
  GateReading,
  GateRefusal,
} from '../../../../src/core/gate/recording/gate-reading.ts';
import { makeEqualShutter } from '../../../../src/core/gate/shutter.ts';
import { gateCase, type GateCase } from './gate-scenes.ts';

/** What a person at the bench would enter: blades alike, nothing measured. */
export function benchOf(drawn: GateCase): GateBench {
  return {
    nominalFilmFps: drawn.nominalFilmFps,
    flashesPerFrame: drawn.flashes,
    shutter: makeEqualShutter(drawn.flashes, drawn.openFraction),
    exposureSeconds: drawn.scene.exposureSeconds,
    mainsHz: drawn.mainsHz,
    rippleLimitPercent: 1,
  };
}

export interface GateVerdict {
  readonly drawn: GateCase;
  readonly reading: GateReading | GateRefusal;
  readonly causeIs: 'right' | 'wrong' | 'refused';
  /** Relative error of the film rate, where one is given. */
  readonly rateError: number | undefined;
  readonly isStatedErrorTrue: boolean;
  readonly isRippleRight: boolean;
  /** Whether the readout time lies within its stated error, where one is given. */
  readonly isReadoutTrue: boolean | undefined;
}

const PERIODIC = ['shutter', 'unequal', 'lamp'];

/** The larger of 4 % of the ripple and 0.3 points; where no flicker is named, what would be missed. */
function isRippleRight(reading: GateReading, truePercent: number): boolean {
  const allowed = Math.max(0.04 * truePercent, 0.3);
  if (!reading.causes.some(({ cause }) => PERIODIC.includes(cause))) {
    return truePercent <= 2 * reading.quietPercent + 0.3;
  }
  const isBelow = reading.ripple.isAtLeast && reading.ripple.percent <= truePercent;
  return isBelow || Math.abs(reading.ripple.percent - truePercent) <= allowed;
}

export function judgeGate(seed: number): GateVerdict {
  const drawn = gateCase(seed);
  const reading = readEmptyGate(drawn.recording, benchOf(drawn));
  if (reading.kind === 'refusal') {
    return {
      drawn,
      reading,
      causeIs: 'refused',
      rateError: undefined,
      isStatedErrorTrue: true,
      isRippleRight: true,
      isReadoutTrue: undefined,
    };
  }
  const main = reading.isEven ? 'none' : reading.causes[0]?.cause;
  const trueFps = drawn.recording.meanFilmFps;
  const { filmRate, readoutSeconds, readoutErrorSeconds } = reading;
  const off = filmRate === undefined ? undefined : Math.abs(filmRate.filmFps - trueFps);
  return {
    drawn,
    reading,
    causeIs: main === drawn.cause || (main === 'none' && drawn.mayPassForEven) ? 'right' : 'wrong',
    isReadoutTrue:
      readoutSeconds === undefined
        ? undefined
        : Math.abs(readoutSeconds - drawn.scene.readoutSeconds) <= (readoutErrorSeconds ?? 0),
    rateError: off === undefined ? undefined : off / trueFps,
    isStatedErrorTrue: off === undefined || off <= (filmRate?.errorFps ?? 0),
    isRippleRight: isRippleRight(reading, 100 * drawn.ripples.together),
  };
}

export interface GateFigures {
  readonly cases: number;
  readonly refused: number;
  readonly causeRight: number;
  readonly causeWrong: number;
  /** Cases with a film rate, and how many of them are within 0.03 %. */
  readonly rates: number;
  readonly ratesClose: number;
  readonly statedTrue: number;
  /** Flickering cases that were read but gave no film rate. */
  readonly rateMissing: number;
  readonly ripplesRight: number;
  /** Cases with a readout time, and how many of them lie within its stated error. */
  readonly readouts: number;
  readonly readoutsTrue: number;
  /** One line for each case that is not as it should be. */
  readonly faults: readonly string[];
}

export function gateFigures(verdicts: readonly GateVerdict[]): GateFigures {
  const count = (is: (verdict: GateVerdict) => boolean): number => verdicts.filter(is).length;
  const faults = verdicts.flatMap(({ drawn, reading, causeIs, ...rest }) => {
    const isFine =
      causeIs === 'right' &&
      (rest.rateError ?? 0) <= 3e-4 &&
      rest.isStatedErrorTrue &&
      rest.isRippleRight;
    if (isFine) return [];
    const said =
      reading.kind === 'refusal'
        ? `refused ${reading.reason}`
        : `${reading.causes.map(({ cause, ripplePercent }) => `${cause} ${ripplePercent.toFixed(2)}`).join(', ')}; rate off ${((rest.rateError ?? 0) * 100).toFixed(4)} %`;
    return [
      `seed ${drawn.seed}: ${drawn.cause}, ripple ${(100 * drawn.ripples.together).toFixed(2)} %, camera ${drawn.scene.cameraFps.toFixed(2)}, readout ${(1000 * drawn.scene.readoutSeconds).toFixed(1)} ms; ${said}`,
    ];
  });
  return {
    cases: verdicts.length,
    refused: count(({ causeIs }) => causeIs === 'refused'),
    causeRight: count(({ causeIs }) => causeIs === 'right'),
    causeWrong: count(({ causeIs }) => causeIs === 'wrong'),
    rates: count(({ rateError }) => rateError !== undefined),
    ratesClose: count(({ rateError }) => rateError !== undefined && rateError <= 3e-4),
    statedTrue: count(
      ({ rateError, isStatedErrorTrue }) => rateError !== undefined && isStatedErrorTrue,
    ),
    rateMissing: count(
      ({ drawn, reading, rateError }) =>
        PERIODIC.includes(drawn.cause) && reading.kind === 'reading' && rateError === undefined,
    ),
    readouts: count(({ isReadoutTrue }) => isReadoutTrue !== undefined),
    readoutsTrue: count(({ isReadoutTrue }) => isReadoutTrue === true),
    ripplesRight: count((verdict) => verdict.causeIs !== 'refused' && verdict.isRippleRight),
    faults,
  };
}
