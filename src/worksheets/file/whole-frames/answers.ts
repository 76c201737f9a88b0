// Sentences of the whole-frames worksheet.
import { formatNumber } from '../../../quantity/format.ts';
import type { PurityCycle } from '../../../core/gate/purity.ts';
import { DARK_ROWS } from '../../gate/dark-rows-words.ts';
import { durationAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import type { Answer, Outcome, VerdictLevel } from '../../machine/types.ts';
import type { WholeFrameFindings, WholeFrameSettings } from './findings.ts';

type Verdict = Outcome['verdict'];

const rateWords = (fps: number): string => `${formatNumber(fps, 4)} frames/s`;

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

function lockedSentence(found: WholeFrameFindings, lost: number): Verdict {
  const { locked, filmFramesInCycle, cameraFramesInCycle } = found;
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
export function promiseSentence(
  found: WholeFrameFindings,
  settings: WholeFrameSettings,
  lost: number,
): Verdict {
  if (found.hasDarkRows) {
    return {
      level: 'stop',
      sentence: `The exposure fits into a dark gap of the shutter, so ${DARK_ROWS}. Lengthen the exposure first.`,
    };
  }
  return settings.running === 'locked'
    ? lockedSentence(found, lost)
    : freeSentence(found, settings);
}

/** The promise in a few words. */
export function promiseAnswer(
  found: WholeFrameFindings,
  settings: WholeFrameSettings,
  level: VerdictLevel,
): Answer {
  const label = 'Whole frames';
  if (found.hasDarkRows) return wordsAnswer(label, DARK_ROWS, { level });
  if (settings.running === 'free') {
    const text = found.isSure ? 'sure for every film frame' : 'not sure';
    return wordsAnswer(label, text, { level });
  }
  const words = {
    always: 'sure at every phase',
    'at-some-phases': 'the phase decides',
    never: 'not at any phase',
  };
  return wordsAnswer(label, words[found.locked], { level });
}

const counted = (count: number, noun: string): string =>
  `${count} ${noun}${count === 1 ? '' : 's'}`;

/** The common cycle in words. */
export function cycleText({ filmFramesInCycle, cameraFramesInCycle }: PurityCycle): string {
  return `${counted(filmFramesInCycle, 'film frame')} in ${counted(cameraFramesInCycle, 'camera frame')}`;
}

/** Running time of a 50 ft reel of Super 8 at 18 frames/s, s. */
const SHORT_REEL_SECONDS = 200;

/** How soon the drift has met every phase, and what that means for a reel. */
export function sweepAnswer(found: WholeFrameFindings, settings: WholeFrameSettings): Answer {
  const { sweepSeconds, cameraFramesInCycle } = found;
  const drift = formatNumber(settings.speedErrorPercent, 3);
  const label = `A drift of ${drift} % meets every phase in`;
  if (sweepSeconds < cameraFramesInCycle / settings.cameraFps) {
    return wordsAnswer(label, 'one common cycle', {
      note: 'The cycle is so long that it meets nearly every phase by itself.',
    });
  }
  const times = SHORT_REEL_SECONDS / sweepSeconds;
  const often =
    times >= 1
      ? `about ${formatNumber(times, 2)} times in a reel of 3 min 20 s`
      : 'less than once in a reel of 3 min 20 s';
  return durationAnswer(label, sweepSeconds, {
    note: `That is ${often}${settings.running === 'locked' ? ', so this is no lock' : ''}.`,
  });
}
