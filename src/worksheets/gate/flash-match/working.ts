import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import type { WorkingStep } from '../../machine/types.ts';
import { rippleStep } from '../ripple-words.ts';
import { ms, smallestRateStep, windowStep } from '../window-step.ts';
import type { Match } from './findings.ts';
import type { Settings } from './inputs.ts';

type Told = 'ripplePercent' | 'matchingExposureSeconds' | 'speedToleranceFps' | 'smallestCameraFps';

/** The steps behind the flash match, with the reader's numbers. */
export function flashMatchWorking(
  found: Match,
  told: (key: Told) => string,
  settings: Settings,
): readonly WorkingStep[] {
  const { flashesPerFrame, cameraFps, exposureSeconds } = settings;
  const { closed, window, readoutSeconds } = found;
  const filmRate = formatNumber(settings.filmFps, 5);
  const flashRate = formatNumber(found.flashRate, 5);
  return [
    {
      words: 'Film rate times flashes per frame gives the flash rate.',
      sum: `F = ${filmRate} × ${flashesPerFrame} = ${flashRate} Hz`,
    },
    {
      words: 'One exposure holds so many flashes; only a whole number gives no ripple.',
      sum: `F × T = ${flashRate} × ${formatExposure(exposureSeconds)} = ${formatNumber(found.flashes, 4)}`,
    },
    rippleStep(found.ripple, told('ripplePercent')),
    {
      words: 'The flash rate less the nearest multiple of the camera rate is the beat.',
      sum: `${flashRate} − ${found.multiple} × ${formatNumber(cameraFps, 5)} = ${formatQuantity(found.beat, 'Hz', 3)}`,
    },
    {
      words: 'One flash is the matching exposure time.',
      sum: `T = 1 ÷ F = 1 ÷ ${flashRate}: ${told('matchingExposureSeconds')}`,
    },
    found.hasClosedForm
      ? {
          words: 'Open fraction d times ripple limit q times film rate f is the speed tolerance.',
          sum: `${formatNumber(settings.openPercent / 100, 3)} × ${formatNumber(settings.rippleLimitPercent, 3)} % × ${filmRate}: ${told('speedToleranceFps')}`,
        }
      : {
          words:
            'The film rate is moved off in small steps until the ripple passes the limit; that is the speed tolerance.',
          sum: told('speedToleranceFps'),
        },
    {
      words: 'Flash rate times readout time gives the bands down the picture.',
      sum: `${flashRate} × ${ms(readoutSeconds)} ms = ${formatNumber(found.bands, 3)}`,
    },
    windowStep({ ...settings, readoutSeconds }, closed, window, found.longestDark),
    ...(settings.readoutSeconds === undefined && window !== undefined
      ? [
          {
            words:
              'A readout that was not measured counts as one camera frame of whatever rate, so two camera frames must fit into P + c − T.',
            sum: `2 ÷ (${ms(1 / settings.filmFps)} + ${ms(closed)} − ${ms(exposureSeconds)}) ms: ${told('smallestCameraFps')}`,
          },
        ]
      : smallestRateStep(window, told('smallestCameraFps'))),
  ];
}
