// Verdict and answers of the match finder.
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { exposure, quantity } from '../../machine/answers.ts';
import type { AnswerBody, OutcomeOf } from '../../machine/define-worksheet.ts';
import type { Outcome } from '../../machine/types.ts';
import { changeWords, rateWords, readoutLimitWords, settingWords } from '../rate-words.ts';
import type { BestSetting, Findings } from './findings.ts';
import type { FinderEntries } from './inputs.ts';

/** What is added while the readout time is not measured. */
const READOUT_ASSUMED = ' The readout time is not measured: a whole camera frame is assumed.';

/** What stands in the way of most of the settings. */
function obstacleWords({ failed, combinations }: Findings): string {
  const most = Math.max(...Object.values(failed));
  if (most === failed['exposure-too-long']) {
    return 'the exposure times are too long for the camera rates';
  }
  if (most === failed['readout-too-long']) return 'the readout is longer than the camera frames';
  const isOne = combinations === 1;
  return most === failed.ripple
    ? `${isOne ? 'it flickers' : 'most flicker'}, so another film rate or a free exposure time is needed`
    : `${isOne ? 'it leaves' : 'most leave'} blended frames, so a faster camera or a shorter readout is needed`;
}

/** The nearest film rate that works, or what is missing everywhere. */
function nearestWords(found: Findings, { speedErrorPercent, nativeFps }: FinderEntries): string {
  if (found.isSpeedTooUnsure) {
    return ` With the speed ${formatQuantity(speedErrorPercent, 'percent', 2)} off, even a perfect match ripples by ${formatQuantity(found.unavoidablePercent, 'percent', 3)}: measure the speed more finely, or steady it.`;
  }
  if (found.nearest === undefined) {
    return ' No film rate from 8 to 30 frames/s works with these camera rates and exposure times, not even with a global shutter.';
  }
  const { setting, readoutSeconds } = found.nearest;
  const isNative = Math.abs(setting.filmFps / nativeFps - 1) < 1e-9;
  const film = isNative
    ? 'the native rate'
    : `${changeWords(setting.filmFps, nativeFps)} than native`;
  const readout = readoutSeconds === undefined ? '' : `, ${readoutLimitWords(readoutSeconds)}`;
  return ` The nearest film rate that would: ${settingWords(setting)} (${film})${readout}.`;
}

export function verdictFor(found: Findings, entries: FinderEntries): Outcome['verdict'] {
  const assumed = entries.readoutSeconds === undefined ? READOUT_ASSUMED : '';
  const [best] = found.best;
  if (best !== undefined) {
    return {
      level: 'good',
      sentence: `Set ${settingWords(best)}: ${found.usable === 1 ? 'the only setting that works' : `the best of ${formatNumber(found.usable)} settings that work`}.${assumed}`,
    };
  }
  const none =
    found.combinations === 1
      ? 'The one setting does not work'
      : `None of the ${formatNumber(found.combinations)} settings works`;
  return {
    level: 'stop',
    sentence: `${none}: ${obstacleWords(found)}.${nearestWords(found, entries)}${assumed}`,
  };
}

/** A rate as readers know it. */
const rateAnswer = (fps: number): AnswerBody => ({
  ...quantity(fps, 'fps'),
  text: rateWords(fps, true),
});

type BestKey = 'bestFilmFps' | 'bestCameraFps' | 'bestExposureSeconds' | 'bestRipplePercent';

/** The answers about the best setting; none where nothing works. */
export function bestAnswers(best: BestSetting | undefined): OutcomeOf<BestKey>['answers'] {
  if (best === undefined) return {};
  return {
    bestFilmFps: rateAnswer(best.filmFps),
    bestCameraFps: rateAnswer(best.cameraFps),
    bestExposureSeconds: exposure(best.exposureSeconds),
    bestRipplePercent: quantity(best.worstRipplePercent, 'percent', 3, {
      note: 'With the projector’s speed off by as much as you say.',
    }),
  };
}
