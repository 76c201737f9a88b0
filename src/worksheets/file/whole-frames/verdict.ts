// The verdict of the whole-frames worksheet.
import { formatNumber } from '../../../quantity/format.ts';
import { DARK_ROWS } from '../../gate/dark-rows-words.ts';
import type { Outcome } from '../../machine/types.ts';
import type { WholeFrameFindings } from './findings.ts';
import type { WholeFrameSettings } from './inputs.ts';

type Verdict = Outcome['verdict'];

/** A camera rate as the sentences and notes of the sheet tell it. */
export const rateWords = (fps: number): string => `${formatNumber(fps, 4)} frames/s`;

function freeSentence(found: WholeFrameFindings, { cameraFps }: WholeFrameSettings): Verdict {
  const { smallest, betterRate } = found;
  if (smallest === undefined) {
    return {
      level: 'stop',
      sentence:
        'No camera frame can be whole: exposure and readout together outlast a film frame and the dark after it.',
    };
  }
  if (found.isSure) {
    return {
      level: 'good',
      sentence: `Every film frame is sure of a whole camera frame: ${rateWords(cameraFps)} is enough, ${formatNumber(smallest, 4)} is needed.`,
    };
  }
  const remedy =
    betterRate === undefined
      ? 'no usual rate leaves time for this exposure and readout'
      : `of the usual rates ${formatNumber(betterRate.valueOf(), 4)} is the smallest that does`;
  return {
    level: 'care',
    sentence: `${rateWords(cameraFps)} cannot promise whole frames; ${formatNumber(smallest, 4)} is needed, and ${remedy}.`,
  };
}

function lockedSentence(found: WholeFrameFindings): Verdict {
  const { locked, filmFramesInCycle, cameraFramesInCycle, lostFilmFrames: lost } = found;
  const ratio = `${filmFramesInCycle} : ${cameraFramesInCycle}`;
  if (locked === 'always') {
    return {
      level: 'good',
      sentence: `At the exact ratio ${ratio} every film frame has a whole camera frame, whatever the phase.`,
    };
  }
  if (locked === 'never') {
    return {
      level: 'stop',
      sentence: `At the exact ratio ${ratio} no phase gives every film frame a whole camera frame.`,
    };
  }
  const now =
    lost === 0
      ? 'at the phase entered none is lost'
      : `at the phase entered ${lost} of ${filmFramesInCycle} have none`;
  const chance = formatNumber(found.goodPhases * 100, 3);
  return {
    level: 'care',
    sentence: `At the exact ratio ${ratio} the phase decides: ${chance} % of the start phases give every film frame a whole camera frame, and ${now}.`,
  };
}

/** The verdict for machines that run free or hold an exact ratio. */
export function promiseSentence(found: WholeFrameFindings, settings: WholeFrameSettings): Verdict {
  if (found.hasDarkRows) {
    return {
      level: 'stop',
      sentence: `The exposure fits into a dark gap of the shutter, so ${DARK_ROWS}. Lengthen the exposure first.`,
    };
  }
  return settings.running === 'locked' ? lockedSentence(found) : freeSentence(found, settings);
}
