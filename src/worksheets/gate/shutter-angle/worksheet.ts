import {
  fitsCameraFrame,
  exposureOfAngleSeconds,
  shutterAngleDegrees,
} from '../../../core/gate/exposure.ts';
import {
  formatExposure,
  formatNumber,
  formatQuantity,
  formatRate,
} from '../../../quantity/format.ts';
import { exposureAnswer, quantityAnswer } from '../../machine/labelled-answers.ts';
import { requireWithinCameraFrame } from '../camera-frame-limits.ts';
import { cameraFpsInput, exposureSecondsInput } from '../gate-inputs.ts';
import { defineWorksheet } from '../../machine/types.ts';

export const worksheet = defineWorksheet({
  id: 'shutter-angle',
  title: 'Shutter angle',
  question: 'Which shutter angle is this exposure time, here and at other camera rates?',
  chapter: 'gate/matching',
  inputs: {
    cameraFps: cameraFpsInput,
    exposureSeconds: {
      ...exposureSecondsInput,
      minimum: 0.00001,
      default: '1/54',
      help: 'As a time, or as an angle, which is read at the camera rate above.',
    },
    otherRates: {
      kind: 'list',
      label: 'Other camera rates',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
      longest: 12,
      default: '24; 25; 30000/1001; 30; 50; 60000/1001',
      accepted: '24; 25; 30000/1001',
      help: 'Rates to compare, separated by semicolons.',
      bench: 'camera.cameraRates',
    },
  },
  model:
    'Shutter angle = 360° × exposure time × camera rate. Exact. The same angle at another rate is another time, and only the time matches the flashes.',
  compute({ cameraFps, exposureSeconds, otherRates }, exact) {
    requireWithinCameraFrame(cameraFps, exposureSeconds);
    const angle = Math.min(360, shutterAngleDegrees(exposureSeconds, cameraFps));
    const time = formatExposure(exposureSeconds);
    const angleText = formatQuantity(angle, 'deg', 4);
    return {
      verdict: {
        level: 'note',
        sentence: `${time} is a shutter angle of ${angleText} at ${formatNumber(cameraFps, 4)} frames/s.`,
      },
      answers: {
        angleDegrees: quantityAnswer('Shutter angle', angle, 'deg', 4),
        exposureSeconds: exposureAnswer('Exposure time', exposureSeconds),
        exposureMilliseconds: quantityAnswer(
          'Exposure time in ms',
          exposureSeconds * 1000,
          'ms',
          4,
        ),
        framePercent: quantityAnswer('Share of the camera frame', angle / 3.6, 'percent', 3, {
          note: 'The rest of each camera frame is not exposed.',
        }),
      },
      tables: [
        {
          caption: `${time} and ${angleText} at other camera rates`,
          columns: ['Camera rate', `Angle of ${time}`, `Time of ${angleText}`],
          rows: otherRates.map((rate, index) => {
            const exactRate = exact.otherRates[index];
            const rateText =
              exactRate === undefined ? formatNumber(rate, 5) : formatRate(exactRate, false);
            const isPossible = fitsCameraFrame(exposureSeconds, rate);
            return {
              cells: [
                rateText,
                isPossible
                  ? formatQuantity(shutterAngleDegrees(exposureSeconds, rate), 'deg', 4)
                  : 'does not fit',
                formatExposure(exposureOfAngleSeconds(angle, rate)),
              ],
              level: isPossible ? 'note' : 'stop',
            };
          }),
        },
      ],
    };
  },
  working({ cameraFps, exposureSeconds }, { answers }) {
    const rate = formatNumber(cameraFps, 5);
    return [
      {
        words: 'A full turn of the shutter is one camera frame, 360°.',
        sum: `one frame = 1 ÷ ${rate} = ${formatNumber(1000 / cameraFps, 4)} ms`,
      },
      {
        words: 'The angle is the share of the frame that is exposed.',
        sum: `360° × ${formatExposure(exposureSeconds)} × ${rate} = ${answers['angleDegrees']?.text ?? ''}`,
      },
    ];
  },
  cautions: [
    'A camera that offers angles only keeps the angle when the rate is changed: look at the time again.',
  ],
  sources: ['shutter-angle-encyclopaedia', 'shutter-angle-article', 'arithmetic'],
});
