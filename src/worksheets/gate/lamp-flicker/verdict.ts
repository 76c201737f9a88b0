import type { Setting } from '../../../core/gate/complete-setting.ts';
import type { Advice } from '../../../core/gate/setting-advice.ts';
import { formatQuantity } from '../../../quantity/format.ts';
import type { Outcome } from '../../machine/types.ts';
import { adviceSentence } from '../setting-advice-words.ts';

/** Ripples at the settings as they are, what the flash match advises, and what the lamp leaves there. */
export interface Flicker {
  readonly together: number;
  readonly shutterAlone: number;
  readonly advice: Advice;
  /** Ripple of shutter and lamp at the advised setting, %; undefined where nothing is advised. */
  readonly atAdvised: number | undefined;
}

/** A lamp that adds less than this, %, is not what anybody sees. */
const NEXT_TO_NOTHING = 0.5;

const percent = (value: number): string => formatQuantity(value, 'percent', 3);

/** What the lamp does at the advised setting: without this, who sets it would still see it flicker. */
function lampThere(atAdvised: number | undefined, limit: number): string {
  if (atAdvised === undefined) return '';
  return atAdvised > limit
    ? ` The lamp would still leave ${percent(atAdvised)} there: feed it with smooth direct current as well.`
    : ` With the lamp as it is, ${percent(atAdvised)} is left there, within your limit.`;
}

export function verdictOf(found: Flicker, now: Setting, limit: number): Outcome['verdict'] {
  const { together, shutterAlone, advice, atAdvised } = found;
  if (together <= limit) {
    return {
      level: 'good',
      sentence: `Shutter and lamp together leave a ripple of ${percent(together)}, within your limit.`,
    };
  }
  if (shutterAlone <= limit) {
    return {
      level: 'stop',
      sentence: `The lamp raises the ripple from ${percent(shutterAlone)} to ${percent(together)}, pulsing at the beats below; feed the lamp with smooth direct current.`,
    };
  }
  const cause =
    together - shutterAlone < NEXT_TO_NOTHING
      ? `The ripple of ${percent(together)} comes from the shutter; the lamp adds next to nothing here.`
      : `Two things flicker: the shutter alone leaves ${percent(shutterAlone)}, and the lamp makes it ${percent(together)}.`;
  // The flash match advises with a readout that is not measured, as this sheet does not ask for it.
  const order = adviceSentence(advice, now, false, 'the shutter is matched');
  return { level: 'stop', sentence: `${cause}${order}${lampThere(atAdvised, limit)}` };
}
