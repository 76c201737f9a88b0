import Fraction from 'fraction.js';
import { quotation, type PriceEntry } from '../../../core/customer/price-lines.ts';
import { exactStepByRule } from '../../../core/reel/film-length.ts';
import type { Exact, Values } from './inputs.ts';

/** Running time of one reel at its native rate, as typed or from its length, s. */
function reelSecondsOf({ gauge, runningSeconds }: Values, exact: Exact): Fraction {
  if (runningSeconds !== undefined) return new Fraction(runningSeconds);
  const frames = exact.lengthMetres.mul(1000).div(exactStepByRule(gauge, 'frames-per-foot'));
  return frames.div(exact.nativeFps);
}

/** Minutes charged for all reels, to the hundredth: what is printed is what is multiplied. */
function minutesOf({ minuteRule, reelCount }: Values, reelSeconds: Fraction): Fraction {
  const perReel = reelSeconds.div(60);
  const charged = minuteRule === 'begun' ? perReel.ceil() : perReel;
  return charged.mul(reelCount).round(2);
}

/** The lines of the offer and its sums, with the minutes behind them. */
export function quotedJob(values: Values, exact: Exact) {
  const reelSeconds = reelSecondsOf(values, exact);
  const minutes = minutesOf(values, reelSeconds);
  const entries: readonly PriceEntry[] = [
    { label: 'Reels', quantity: new Fraction(values.reelCount), unitPrice: exact.pricePerReel },
    { label: 'Minutes of film', quantity: minutes, unitPrice: exact.pricePerMinute },
    {
      label: 'Discs, sticks or drives',
      quantity: new Fraction(values.carrierCount),
      unitPrice: exact.carrierPrice,
    },
    { label: 'Fixed part', quantity: new Fraction(1), unitPrice: exact.fixedPrice },
  ];
  const charged = entries.filter(({ quantity, unitPrice }) => !quantity.mul(unitPrice).equals(0));
  return {
    sums: quotation(charged, exact),
    minutes: minutes.valueOf(),
    reelSeconds: reelSeconds.valueOf(),
  };
}
