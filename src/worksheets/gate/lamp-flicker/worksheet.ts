import { beatHz } from '../../../core/gate/beat.ts';
import { flashRateHz } from '../../../core/gate/flash-rate.ts';
import { lampAloneRipple, lampRipple, makeLamp } from '../../../core/gate/lamp-flicker.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { equalBladeRipplePercent } from '../../../core/gate/ripple.ts';
import { adviseSetting } from '../../../core/gate/setting-advice.ts';
import { makeEqualShutter } from '../../../core/gate/shutter.ts';
import { exposure, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { flashCaution } from '../flash-caution.ts';
import { requireWithinCameraFrame } from '../camera-frame-limits.ts';
import {
  cameraFpsInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  rippleLimitPercentInput,
} from '../gate-inputs.ts';
import {
  LAMP_KINDS,
  lampDepthPercentInput,
  lampHzInput,
  lampOnPercentInput,
} from '../lamp-inputs.ts';
import { rippleStopsAnswer } from '../ripple-words.ts';
import { verdictOf } from './verdict.ts';

/** Whole lamp periods nearest to the exposure set, s; undefined where not even one fits. */
function lampMatchSeconds(
  lampHz: number,
  exposureSeconds: number,
  cameraFps: number,
): number | undefined {
  const most = Math.floor((lampHz / cameraFps) * (1 + 1e-9));
  const periods = Math.min(most, Math.max(1, Math.round(lampHz * exposureSeconds)));
  return most < 1 ? undefined : periods / lampHz;
}

export const worksheet = defineWorksheet({
  id: 'lamp-flicker',
  title: 'Lamp flicker',
  question: 'Does the lamp flicker beside the shutter, and how much does the picture show?',
  chapter: 'gate/light',
  inputs: {
    filmFps: filmFpsInput,
    flashesPerFrame: { ...flashesPerFrameInput, maximum: 5 },
    openPercent: openPercentInput,
    cameraFps: cameraFpsInput,
    exposureSeconds: { ...exposureSecondsInput, maximum: 0.2, default: '1/54' },
    lampKind: {
      kind: 'choice',
      label: 'Lamp',
      options: LAMP_KINDS,
      default: 'smooth',
      help: 'A filament on direct current and an LED on a smooth driver do not flicker.',
    },
    lampHz: lampHzInput,
    depthPercent: lampDepthPercentInput,
    onPercent: lampOnPercentInput,
    rippleLimitPercent: rippleLimitPercentInput,
  },
  model:
    'Equal hard-edged blades times a lamp that flickers at a rate of its own. The ripple is the exact range over every phase of shutter and lamp; lamp and camera at rates in step stay in part of it until one drifts. The depth of real lamps must be measured; figures here are from memory. The mains drifts by a few parts in a thousand, so a lamp in step with the camera does not stay there. Where the shutter is not matched, the setting named is the flash match’s, for a readout time that is not measured; whether every film frame is caught whole is asked there.',
  answers: {
    ripplePercent: 'Ripple of shutter and lamp',
    rippleStops: 'Ripple in stops',
    shutterAlonePercent: 'Shutter alone',
    lampAlonePercent: 'Lamp alone',
    lampBeatHz: 'Lamp beat with the camera',
    differenceBeatHz: 'Beat of lamp against shutter',
    lampMatchSeconds: 'Nearest exposure of whole lamp periods',
  },
  find(settings) {
    const { filmFps, flashesPerFrame, openPercent, cameraFps, exposureSeconds } = settings;
    requireWithinCameraFrame(cameraFps, exposureSeconds);
    const open = openPercent / 100;
    const { lampKind, lampHz, depthPercent, onPercent } = settings;
    const lamp = makeLamp(lampKind, lampHz, depthPercent, onPercent);
    const flashRate = flashRateHz(filmFps, flashesPerFrame);
    const difference = Math.abs(flashRate - lampHz);
    const lampMatch = lampMatchSeconds(lampHz, exposureSeconds, cameraFps);
    const rippleAt = (fps: number, seconds: number): number =>
      lampRipple(fps, flashesPerFrame, open, seconds, lamp).percent;
    const advice = adviseSetting(settings, {
      shutter: makeEqualShutter(flashesPerFrame, open),
      readoutSeconds: undefined,
      rippleLimitPercent: settings.rippleLimitPercent,
    });
    return {
      ripple: lampRipple(filmFps, flashesPerFrame, open, exposureSeconds, lamp),
      shutterAlone: equalBladeRipplePercent(filmFps, flashesPerFrame, open, exposureSeconds),
      advice,
      atAdvised:
        advice.kind === 'none'
          ? undefined
          : rippleAt(advice.setting.filmFps, advice.setting.exposureSeconds),
      lampAlone: lampAloneRipple(lamp, exposureSeconds).percent,
      flashRate,
      shutterBeat: beatHz(flashRate, cameraFps),
      lampBeat: Math.abs(beatHz(lampHz, cameraFps)),
      differenceBeat: difference < 1e-9 ? 0 : Math.abs(beatHz(difference, cameraFps)),
      lampMatch,
      atLampMatch: lampMatch === undefined ? undefined : rippleAt(filmFps, lampMatch),
    };
  },
  outcome(found, settings) {
    const { ripple, shutterAlone, lampBeat, lampMatch, atLampMatch = 0 } = found;
    const { rippleLimitPercent } = settings;
    return {
      cautions: flashCaution(ripple.percent, found.shutterBeat),
      verdict: verdictOf({ ...found, together: ripple.percent }, settings, rippleLimitPercent),
      answers: {
        ripplePercent: quantity(ripple.percent, 'percent', 3, {
          level: ripple.percent <= rippleLimitPercent ? 'good' : 'stop',
          note: 'Peak to peak, over every phase that can come.',
        }),
        rippleStops: rippleStopsAnswer(ripple.stops),
        shutterAlonePercent: quantity(shutterAlone, 'percent'),
        lampAlonePercent: quantity(found.lampAlone, 'percent', 3, {
          note: 'As in a machine without a shutter.',
        }),
        lampBeatHz: quantity(lampBeat, 'Hz', 3, {
          note:
            lampBeat === 0
              ? 'In step with the camera; it moves only when the mains drifts.'
              : 'How often the lamp alone would make the picture pulse.',
        }),
        differenceBeatHz: quantity(found.differenceBeat, 'Hz', 3, {
          note: 'Their difference, as the camera shows it: a pulsation of its own.',
        }),
        lampMatchSeconds:
          lampMatch === undefined
            ? words('none fits', { note: 'One lamp period is longer than a camera frame.' })
            : exposure(lampMatch, {
                level: atLampMatch <= rippleLimitPercent ? 'good' : 'stop',
                note: `Shutter and lamp together leave ${formatQuantity(atLampMatch, 'percent', 3)} there.`,
              }),
      },
    };
  },
  working({ flashRate }, told, { cameraFps, exposureSeconds, lampHz }) {
    const time = formatExposure(exposureSeconds);
    const lampRate = formatNumber(lampHz, 5);
    return [
      {
        words:
          'One exposure holds so many flashes, and so many lamp periods. Whole numbers are harmless.',
        sum: `${formatNumber(flashRate, 4)} × ${time} = ${formatNumber(flashRate * exposureSeconds, 4)}; ${lampRate} × ${time} = ${formatNumber(lampHz * exposureSeconds, 4)}`,
      },
      {
        words: 'Each alone, over all its phases.',
        sum: `shutter ${told('shutterAlonePercent')}, lamp ${told('lampAlonePercent')}`,
      },
      {
        words:
          'The product of both over every pair of phases; most less least, divided by the mean.',
        sum: told('ripplePercent'),
      },
      {
        words: 'The lamp rate less the nearest multiple of the camera rate is the lamp beat.',
        sum: `${lampRate} against multiples of ${formatNumber(cameraFps, 5)}: ${told('lampBeatHz')}`,
      },
    ];
  },
  cautions: [
    'Work on a mains lamp or its supply is for a qualified person, under the local rules. Pull the plug and let the lamp cool first.',
    'Do not look into the lamp, bright LEDs included.',
  ],
  sources: [
    'cie-tn-006-2016',
    'richardson-handbook-1927',
    'mains-frequency',
    'wcag-2-3-1',
    'arithmetic',
    'common-practice',
    'from-memory',
  ],
});
