// Verdict, answers and tables of the match finder.
import type { FinderBench, FinderResult } from '../../../core/gate/match-finder.ts';
import { nearestWorkingFilm } from '../../../core/gate/nearest-film.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { exposureAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { faultWords, rankWords } from './words.ts';
import { changeWords, rateWords, readoutLimitWords, settingWords } from '../rate-words.ts';
import type { Answer, Outcome, ResultTable } from '../../machine/types.ts';

/** What is added while the readout time is not measured. */
const READOUT_ASSUMED = ' The readout time is not measured: a whole camera frame is assumed.';

/** What stands in the way of most of the settings. */
function obstacleWords({ failed }: FinderResult): string {
  const most = Math.max(...Object.values(failed));
  if (most === failed['exposure-too-long']) {
    return 'the exposure times are too long for the camera rates';
  }
  if (most === failed['readout-too-long']) return 'the readout is longer than the camera frames';
  return most === failed.ripple
    ? 'most flicker, so another film rate or a free exposure time is needed'
    : 'most leave blended frames, so a faster camera or a shorter readout is needed';
}

/** The nearest film rate that works, or what is missing everywhere. */
function nearestWords(bench: FinderBench): string {
  // A match at exactly the right speed still ripples by the speed error over the open fraction.
  const unavoidable = bench.speedErrorPercent / bench.openFraction;
  if (unavoidable > bench.rippleLimitPercent) {
    return ` With the speed ${formatQuantity(bench.speedErrorPercent, 'percent', 2)} off, even a perfect match ripples by ${formatQuantity(unavoidable, 'percent', 3)}: measure the speed more finely, or steady it.`;
  }
  const nearest = nearestWorkingFilm(bench);
  if (nearest === undefined) {
    return ' No film rate from 8 to 30 frames/s works with these camera rates and exposure times, not even with a global shutter.';
  }
  const { setting, readoutSeconds } = nearest;
  const isNative = Math.abs(setting.filmFps / bench.nativeFps - 1) < 1e-9;
  const film = isNative
    ? 'the native rate'
    : `${changeWords(setting.filmFps, bench.nativeFps)} than native`;
  const readout = readoutSeconds === undefined ? '' : `, ${readoutLimitWords(readoutSeconds)}`;
  return ` The nearest film rate that would: ${settingWords(setting)} (${film})${readout}.`;
}

export function verdictFor(found: FinderResult, bench: FinderBench): Outcome['verdict'] {
  const assumed = bench.readoutSeconds === undefined ? READOUT_ASSUMED : '';
  const [best] = found.best;
  if (best !== undefined) {
    return {
      level: 'good',
      sentence: `Set ${settingWords(best)}: ${found.usable === 1 ? 'the only setting that works' : `the best of ${formatNumber(found.usable)} settings that work`}.${assumed}`,
    };
  }
  return {
    level: 'stop',
    sentence: `None of the ${formatNumber(found.combinations)} settings works: ${obstacleWords(found)}.${nearestWords(bench)}${assumed}`,
  };
}

export function bestTable(found: FinderResult, bench: FinderBench): ResultTable {
  return {
    caption:
      found.usable > found.best.length
        ? `The best ${found.best.length} of ${formatNumber(found.usable)} settings that work`
        : 'Settings that work, the best first',
    columns: ['Film rate', 'Camera rate', 'Exposure', 'Why here'],
    rows: found.best.map((match) => ({
      cells: [
        rateWords(match.filmFps),
        rateWords(match.cameraFps),
        formatExposure(match.exposureSeconds),
        rankWords(match, bench),
      ],
      level: 'good',
    })),
  };
}

export function missTable(found: FinderResult, bench: FinderBench): ResultTable {
  return {
    caption: 'Typical settings that fail',
    columns: ['Film rate', 'Camera rate', 'Exposure', 'Why not'],
    rows: found.nearMisses.map((miss) => ({
      cells: [
        rateWords(miss.filmFps),
        rateWords(miss.cameraFps),
        formatExposure(miss.exposureSeconds),
        faultWords(miss, bench),
      ],
      level: 'stop',
    })),
  };
}

function knownRateAnswer(label: string, fps: number): Answer {
  return { ...wordsAnswer(label, rateWords(fps, true)), value: fps, unit: 'frames/s' };
}

export function bestAnswers(found: FinderResult): Readonly<Record<string, Answer>> {
  const [best] = found.best;
  if (best === undefined) return {};
  return {
    bestFilmFps: knownRateAnswer('Film rate', best.filmFps),
    bestCameraFps: knownRateAnswer('Camera rate', best.cameraFps),
    bestExposureSeconds: exposureAnswer('Exposure time', best.exposureSeconds),
    bestRipplePercent: quantityAnswer('Ripple at worst', best.worstRipplePercent, 'percent', 3, {
      note: 'With the projector’s speed off by as much as you say.',
    }),
  };
}
