// The answers of the whole-frames worksheet.
import { formatNumber } from '../../../quantity/format.ts';
import { DARK_ROWS, DARK_ROWS_SENTENCE } from '../../gate/dark-rows-words.ts';
import { duration, quantity, words } from '../../machine/answers.ts';
import type { AnswerBody, OutcomeOf } from '../../machine/define-worksheet.ts';
import type { VerdictLevel } from '../../machine/types.ts';
import type { WholeFrameFindings } from './findings.ts';
import type { WholeFrameSettings } from './inputs.ts';
import { rateWords } from './verdict.ts';

/** Labels, in printed order. */
export const labels = {
  wholeFrames: 'Whole frames',
  windowMilliseconds: 'Window for the start',
  smallestCameraFps: 'Smallest sure camera rate',
  oneFlashCameraFps: 'The same if you expose one flash',
  longestReadoutMilliseconds: 'Longest readout time',
  wholeSharePercent: 'Whole camera frames in the long run',
  commonCycle: 'Common cycle',
  wholeCameraFrames: 'Whole in the cycle',
  blendedCameraFrames: 'Blended in the cycle',
  darkCameraFrames: 'With dark rows in the cycle',
  filmFramesWithoutWhole: 'Film frames without a whole one',
  phaseSweepSeconds: 'The drift meets every phase in',
  goodPhasePercent: 'Start phases that lose no film frame',
} as const;

export type AnswerKey = keyof typeof labels;

/** The promise in a few words. */
function promiseAnswer(
  found: WholeFrameFindings,
  settings: WholeFrameSettings,
  level: VerdictLevel,
): AnswerBody {
  if (found.hasDarkRows) return words(DARK_ROWS, { level });
  if (settings.running === 'free') {
    return words(found.isSure ? 'sure for every film frame' : 'not sure', { level });
  }
  const lockedWords = {
    always: 'sure at every phase',
    'at-some-phases': 'the phase decides',
    never: 'not at any phase',
  };
  return words(lockedWords[found.locked], { level });
}

function windowAnswer({ window }: WholeFrameFindings): AnswerBody {
  if (window === undefined) return words('none', { note: DARK_ROWS_SENTENCE });
  const note =
    window > 0
      ? 'An exposure that starts inside it holds one film frame only.'
      : 'Negative: no exposure can be whole.';
  return quantity(window * 1000, 'ms', 4, { note });
}

function oneFlashAnswer({ oneFlash }: WholeFrameFindings): AnswerBody {
  return oneFlash === undefined
    ? words('none', { note: 'No rate leaves time for one flash and this readout.' })
    : quantity(oneFlash, 'fps', 4, { note: 'The matching exposure time at this film rate.' });
}

function longestReadoutAnswer(
  { longestReadout, hasDarkRows }: WholeFrameFindings,
  cameraFps: number,
): AnswerBody {
  const rate = rateWords(cameraFps);
  if (longestReadout !== undefined) {
    return quantity(longestReadout * 1000, 'ms', 3, { note: `With it, ${rate} is just sure.` });
  }
  return words('none', {
    note: hasDarkRows ? DARK_ROWS_SENTENCE : `At ${rate} not even a global shutter is sure.`,
  });
}

const counted = (count: number, noun: string): string =>
  `${count} ${noun}${count === 1 ? '' : 's'}`;

/** Running time of a 50 ft reel of Super 8 at 18 frames/s, s. */
const SHORT_REEL_SECONDS = 200;

/** How soon the drift has met every phase, and what that means for a reel. */
function sweepAnswer(found: WholeFrameFindings, settings: WholeFrameSettings): AnswerBody {
  const { sweepSeconds, cameraFramesInCycle } = found;
  if (sweepSeconds < cameraFramesInCycle / settings.cameraFps) {
    return words('one common cycle', {
      note: 'The cycle is so long that it meets nearly every phase by itself.',
    });
  }
  const drift = formatNumber(settings.speedErrorPercent, 3);
  const times = SHORT_REEL_SECONDS / sweepSeconds;
  const often =
    times >= 1
      ? `about ${formatNumber(times, 2)} times in a reel of 3 min 20 s`
      : 'less than once in a reel of 3 min 20 s';
  return duration(sweepSeconds, {
    note: `With a drift of ${drift} %, that is ${often}${settings.running === 'locked' ? ', so this is no lock' : ''}.`,
  });
}

/** The camera frames of one common cycle, counted by what they hold. */
function cycleAnswers({ cycle, lostFilmFrames }: WholeFrameFindings) {
  const { frames, isCut, filmFramesInCycle, cameraFramesInCycle } = cycle;
  const whole = frames.filter(({ kind }) => kind === 'whole').length;
  const blended = frames.filter(({ kind }) => kind === 'blended').length;
  const dark = frames.filter(({ darkRowsShare }) => darkRowsShare > 0).length;
  const stretch = `${isCut ? 'of the first' : 'of'} ${frames.length} camera frames`;
  return {
    commonCycle: words(
      `${counted(filmFramesInCycle, 'film frame')} in ${counted(cameraFramesInCycle, 'camera frame')}`,
    ),
    wholeCameraFrames: quantity(whole, 'one', 3, { note: `${stretch}, started at this phase.` }),
    blendedCameraFrames: quantity(blended, 'one', 3, { note: `${stretch}.` }),
    darkCameraFrames: quantity(dark, 'one', 3, {
      note: `${stretch}; a row without light is never whole.`,
    }),
    filmFramesWithoutWhole: quantity(lostFilmFrames, 'one', 3, {
      level: lostFilmFrames === 0 ? 'good' : 'care',
      note: `${isCut ? 'In this stretch' : `Of ${filmFramesInCycle}`}, at this phase.`,
    }),
  };
}

export function answersOf(
  found: WholeFrameFindings,
  settings: WholeFrameSettings,
  level: VerdictLevel,
): OutcomeOf<AnswerKey>['answers'] {
  const { smallest, longRunShare, goodPhases } = found;
  return {
    wholeFrames: promiseAnswer(found, settings, level),
    windowMilliseconds: windowAnswer(found),
    smallestCameraFps:
      smallest === undefined
        ? words('none')
        : quantity(smallest, 'fps', 4, { note: 'For machines that run free of each other.' }),
    oneFlashCameraFps: oneFlashAnswer(found),
    longestReadoutMilliseconds: longestReadoutAnswer(found, settings.cameraFps),
    wholeSharePercent: quantity(longRunShare * 100, 'percent', 3, {
      note: 'The rest blend two film frames or have dark rows, and are left out.',
    }),
    ...cycleAnswers(found),
    phaseSweepSeconds: sweepAnswer(found, settings),
    ...(settings.running === 'locked'
      ? { goodPhasePercent: quantity(goodPhases * 100, 'percent', 3) }
      : {}),
  };
}
