import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import type { WorkingStep } from '../../machine/types.ts';
import { smallestRateStep, windowStep } from '../../gate/window-step.ts';
import type { AnswerKey } from './answers.ts';
import type { WholeFrameFindings } from './findings.ts';
import type { WholeFrameSettings } from './inputs.ts';

const ms = (seconds: number): string => formatNumber(seconds * 1000, 4);

/** The steps behind the whole frames, with the reader's numbers. */
export function wholeFramesWorking(
  found: WholeFrameFindings,
  told: (key: AnswerKey) => string,
  settings: WholeFrameSettings,
): readonly WorkingStep[] {
  const {
    filmFps,
    flashesPerFrame,
    openPercent,
    cameraFps,
    exposureSeconds,
    pulldownBladeDegrees,
  } = settings;
  const { closed, window, readoutSeconds, filmFramesInCycle, cameraFramesInCycle, longRunShare } =
    found;
  const wipe = settings.edgeWipeDegrees ?? 0;
  const closedPercent = formatNumber(100 - openPercent, 4);
  return [
    pulldownBladeDegrees === undefined && wipe === 0
      ? {
          words: 'The closed time c of the pulldown blade is its share of a film frame.',
          sum: `c = ${closedPercent} % ÷ (${flashesPerFrame} × ${formatQuantity(filmFps, 'fps', 5)}) = ${ms(closed)} ms`,
        }
      : {
          words:
            'The closed time c is the fully dark part of the pulldown blade: its angle less the wipe.',
          sum: `c = (${formatNumber(pulldownBladeDegrees ?? (360 - 3.6 * openPercent) / flashesPerFrame, 4)}° − ${formatNumber(wipe, 4)}°) ÷ 360° ÷ ${formatQuantity(filmFps, 'fps', 5)} = ${ms(closed)} ms`,
        },
    windowStep({ filmFps, exposureSeconds, readoutSeconds }, closed, window, found.longestDark),
    ...(window === undefined || settings.readoutSeconds !== undefined
      ? smallestRateStep(window, told('smallestCameraFps'))
      : [
          {
            words:
              'A readout that was not measured counts as one camera frame of whatever rate, so two camera frames must fit into P + c − T.',
            sum: `2 ÷ (${ms(1 / filmFps)} + ${ms(closed)} − ${ms(exposureSeconds)}) ms: ${told('smallestCameraFps')}`,
          },
        ]),
    {
      words:
        'What the film frame and its dark leave after the exposure and one camera frame is the longest readout; it is never longer than a camera frame.',
      sum: `P + c − T − 1 ÷ f_c = ${ms(1 / filmFps)} + ${ms(closed)} − ${ms(exposureSeconds)} − ${ms(1 / cameraFps)}, at most ${ms(1 / cameraFps)}: ${told('longestReadoutMilliseconds')}`,
    },
    ...(window === undefined
      ? []
      : [
          {
            words: 'Window times film rate is the share of whole camera frames in the long run.',
            sum: `${ms(window)} ms × ${formatNumber(filmFps, 5)}, at least 0: ${formatNumber(longRunShare * 100, 3)} %`,
          },
        ]),
    {
      words: 'Film rate over camera rate in smallest whole numbers is the common cycle.',
      sum: `${formatNumber(filmFps, 5)} ÷ ${formatNumber(cameraFps, 5)} = ${filmFramesInCycle} ÷ ${cameraFramesInCycle}`,
    },
    {
      words:
        'One divided by film frames in the cycle, camera rate and drift is the time in which every phase is met.',
      sum: `1 ÷ (${filmFramesInCycle} × ${formatNumber(cameraFps, 5)} × ${formatNumber(settings.speedErrorPercent, 3)} %): ${told('phaseSweepSeconds')}`,
    },
  ];
}
