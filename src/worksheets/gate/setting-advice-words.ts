// The complete setting that a verdict names, in words. Flash match and finder say it alike.
import type { Setting } from '../../core/gate/complete-setting.ts';
import { formatExposure, formatQuantity } from '../../quantity/format.ts';
import { NUDGE_PERCENT, type Advice } from '../../core/gate/setting-advice.ts';
import { changeWords, rateWords, readoutLimitWords, settingWords } from './rate-words.ts';
import { words } from '../machine/answers.ts';
import type { AnswerBody } from '../machine/define-worksheet.ts';

/** Film rate, camera rate and exposure as an order, for instance after “Set” or “Run”. */
function orderWords(setting: Setting, now: Setting): string {
  const { filmFps, cameraFps, exposureSeconds } = setting;
  const exposure = formatExposure(exposureSeconds);
  const camera = `the camera to ${rateWords(cameraFps)} frames/s and ${exposure}`;
  if (filmFps !== now.filmFps) {
    return `run the film at ${rateWords(filmFps)} frames/s (${changeWords(filmFps, now.filmFps)}) and set ${camera}`;
  }
  return cameraFps === now.cameraFps ? `set ${exposure}` : `set ${camera}`;
}

const capital = (order: string): string => `${order.charAt(0).toUpperCase()}${order.slice(1)}`;

/**
 * The sentence of the verdict that says what to do; empty when nothing needs to be changed.
 *
 * @param gain  what the setting is good for, beside whole frames
 */
export function adviceSentence(
  advice: Advice,
  now: Setting,
  isReadoutMeasured: boolean,
  gain = 'the light is even',
): string {
  switch (advice.kind) {
    case 'works': {
      if (advice.change === 'none') return '';
      const order = orderWords(advice.setting, now);
      const then = `Then ${gain} and every film frame is sure of a whole camera frame`;
      if (advice.change === 'film') {
        return ` At this film rate no usual camera rate gives both even light and whole frames: ${order}. ${then}.`;
      }
      if (advice.change === 'far-film') {
        return ` Within ${NUDGE_PERCENT} % of this film rate nothing gives both even light and whole frames. The nearest that does: ${order}.`;
      }
      return ` ${capital(order)}. ${then}.`;
    }
    case 'needs-readout': {
      const order = orderWords(advice.setting, now);
      const limit = readoutLimitWords(advice.readoutSeconds);
      return isReadoutMeasured
        ? ` With this readout time no usual setting gives both even light and whole frames. The nearest asks for a faster sensor: ${order}, ${limit}.`
        : ` No setting is sure while the readout time is not measured. Measure it: ${limit} this works: ${order}.`;
    }
    case 'leaves-ripple':
      return ` No exposure is even behind these blades and keeps frames whole. The least ripple that can be had, ${formatQuantity(advice.ripplePercent, 'percent', 3)}: ${orderWords(advice.setting, now)}.`;
    case 'none':
      return ' No film rate gives, at any usual camera rate, both even light and whole frames with this shutter: take a projector with more blades, or drive film and camera from one clock.';
  }
}

/** The same as an answer line, short enough for a table. */
export function adviceAnswer(advice: Advice): AnswerBody {
  switch (advice.kind) {
    case 'works':
      return words(settingWords(advice.setting), {
        level: 'good',
        note: `Even light, and a whole camera frame for every film frame.${advice.change === 'camera' || advice.change === 'film' ? ' The readout time can differ at another camera rate: measure it there.' : ''}`,
      });
    case 'needs-readout':
      return words(`${readoutLimitWords(advice.readoutSeconds)}: ${settingWords(advice.setting)}`, {
        level: 'care',
        note: 'Nothing else that is usual works with the readout time entered.',
      });
    case 'leaves-ripple':
      return words('none is even', {
        level: 'stop',
        note: `Nearest: ${settingWords(advice.setting)}, with a ripple of ${formatQuantity(advice.ripplePercent, 'percent', 3)}.`,
      });
    case 'none':
      return words('none', { level: 'stop' });
  }
}
