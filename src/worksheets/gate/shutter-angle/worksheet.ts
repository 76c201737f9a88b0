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
import { exposure, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { VIDEO_RATE } from '../../machine/rate-ranges.ts';
import { requireWithinCameraFrame } from '../camera-frame-limits.ts';
import { cameraFpsInput, exposureSecondsInput } from '../gate-inputs.ts';

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
      ...VIDEO_RATE,
      kind: 'list',
      label: 'Other camera rates',
      longest: 12,
      default: '24; 25; 30000/1001; 30; 50; 60000/1001',
      accepted: '24; 25; 30000/1001',
      help: 'Rates to compare, separated by semicolons.',
      bench: 'camera.cameraRates',
    },
  },
  model:
    'Shutter angle = 360° × exposure time × camera rate. Exact. The same angle at another rate is another time, and only the time matches the flashes.',
  answers: {
    angleDegrees: 'Shutter angle',
    exposureSeconds: 'Exposure time',
    exposureMilliseconds: 'Exposure time in ms',
    framePercent: 'Share of the camera frame',
  },
  find({ cameraFps, exposureSeconds }, exact) {
    requireWithinCameraFrame(cameraFps, exposureSeconds);
    const angleDegrees = Math.min(360, shutterAngleDegrees(exposureSeconds, cameraFps));
    return {
      angleDegrees,
      elsewhere: exact.otherRates.map((rate) => {
        const fps = rate.valueOf();
        const doesFit = fitsCameraFrame(exposureSeconds, fps);
        return {
          rate,
          angle: doesFit ? shutterAngleDegrees(exposureSeconds, fps) : undefined,
          seconds: exposureOfAngleSeconds(angleDegrees, fps),
        };
      }),
    };
  },
  outcome({ angleDegrees, elsewhere }, { cameraFps, exposureSeconds }) {
    const time = formatExposure(exposureSeconds);
    const angle = quantity(angleDegrees, 'deg', 4);
    return {
      verdict: {
        level: 'note',
        sentence: `${time} is a shutter angle of ${angle.text} at ${formatNumber(cameraFps, 4)} frames/s.`,
      },
      answers: {
        angleDegrees: angle,
        exposureSeconds: exposure(exposureSeconds),
        exposureMilliseconds: quantity(exposureSeconds * 1000, 'ms', 4),
        framePercent: quantity(angleDegrees / 3.6, 'percent', 3, {
          note: 'The rest of each camera frame is not exposed.',
        }),
      },
      tables: [
        {
          caption: `${time} and ${angle.text} at other camera rates`,
          columns: ['Camera rate', `Angle of ${time}`, `Time of ${angle.text}`],
          rows: elsewhere.map((other) => ({
            cells: [
              formatRate(other.rate, false),
              other.angle === undefined ? 'does not fit' : formatQuantity(other.angle, 'deg', 4),
              formatExposure(other.seconds),
            ],
            level: other.angle === undefined ? 'stop' : 'note',
          })),
        },
      ],
    };
  },
  working(_found, told, { cameraFps, exposureSeconds }) {
    const rate = formatNumber(cameraFps, 5);
    return [
      {
        words: 'A full turn of the shutter is one camera frame, 360°.',
        sum: `one frame = 1 ÷ ${rate} = ${formatNumber(1000 / cameraFps, 4)} ms`,
      },
      {
        words: 'The angle is the share of the frame that is exposed.',
        sum: `360° × ${formatExposure(exposureSeconds)} × ${rate} = ${told('angleDegrees')}`,
      },
    ];
  },
  cautions: [
    'A camera that offers angles only keeps the angle when the rate is changed: look at the time again.',
  ],
  sources: ['shutter-angle-encyclopaedia', 'arithmetic'],
});
