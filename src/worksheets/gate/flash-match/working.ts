import { nearestMultiple } from '../../../core/gate/beat.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { match, type Settings } from './findings.ts';
import type { Outcome, WorkingStep } from '../../machine/types.ts';
import { smallestRateStep, windowStep } from '../window-step.ts';

const ms = (seconds: number): string => formatNumber(seconds * 1000, 4);

/** The steps behind the flash match, with the reader's numbers. */
export function flashMatchWorking(
  settings: Settings,
  { answers }: Outcome,
): readonly WorkingStep[] {
  const { filmFps, flashesPerFrame, cameraFps, exposureSeconds } = settings;
  const found = match(settings);
  const { ripple, beat, flashRate, closed, longestDark, openFraction, window, bands } = found;
  const { readoutSeconds } = found;
  const textOf = (key: string): string => answers[key]?.text ?? '';
  const limit = formatNumber(settings.rippleLimitPercent, 3);
  const multiple = nearestMultiple(flashRate, cameraFps);
  return [
    {
      words: 'Film rate times flashes per frame gives the flash rate.',
      sum: `F = ${formatNumber(filmFps, 5)} × ${flashesPerFrame} = ${formatNumber(flashRate, 5)} Hz`,
    },
    {
      words: 'One exposure holds so many flashes; only a whole number gives no ripple.',
      sum: `F × T = ${formatNumber(flashRate, 5)} × ${formatExposure(exposureSeconds)} = ${formatNumber(flashRate * exposureSeconds, 4)}`,
    },
    {
      words:
        'The lit time inside an exposure depends on where it starts. Most less least, divided by the mean, is the ripple.',
      sum: `(${ms(ripple.mostLight)} − ${ms(ripple.leastLight)}) ÷ ${ms(ripple.meanLight)} ms = ${textOf('ripplePercent')}`,
    },
    {
      words: 'The flash rate less the nearest multiple of the camera rate is the beat.',
      sum: `${formatNumber(flashRate, 5)} − ${multiple} × ${formatNumber(cameraFps, 5)} = ${formatQuantity(beat, 'Hz', 3)}`,
    },
    {
      words: 'One flash is the matching exposure time.',
      sum: `T = 1 ÷ F = 1 ÷ ${formatNumber(flashRate, 5)}: ${textOf('matchingExposureSeconds')}`,
    },
    found.isEqual && found.shutter.wipeFraction === 0
      ? {
          words: 'Open fraction d times ripple limit q times film rate f is the speed tolerance.',
          sum: `${formatNumber(openFraction, 3)} × ${limit} % × ${formatNumber(filmFps, 5)}: ${textOf('speedToleranceFps')}`,
        }
      : {
          words:
            'The film rate is moved off in small steps until the ripple passes the limit; that is the speed tolerance.',
          sum: textOf('speedToleranceFps'),
        },
    {
      words: 'Flash rate times readout time gives the bands down the picture.',
      sum: `${formatNumber(flashRate, 5)} × ${ms(readoutSeconds)} ms = ${formatNumber(bands, 3)}`,
    },
    windowStep({ filmFps, exposureSeconds, readoutSeconds }, closed, window, longestDark),
    ...(settings.readoutSeconds === undefined && window !== undefined
      ? [
          {
            words:
              'A readout that was not measured counts as one camera frame of whatever rate, so two camera frames must fit into P + c − T.',
            sum: `2 ÷ (${ms(1 / filmFps)} + ${ms(closed)} − ${ms(exposureSeconds)}) ms: ${textOf('smallestCameraFps')}`,
          },
        ]
      : smallestRateStep(window, textOf('smallestCameraFps'))),
  ];
}
