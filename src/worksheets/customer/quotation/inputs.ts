import { nativeFpsInput } from '../../machine/film-inputs.ts';
import type { ExactOf, InputSpecs, ValuesOf } from '../../machine/types.ts';
import {
  carrierPriceInput,
  fixedPriceInput,
  minimumChargeInput,
  minuteRuleInput,
  pricePerMinuteInput,
  pricePerReelInput,
  reelCountInput,
  reelGaugeInput,
  reelLengthInput,
  taxPercentInput,
} from '../job-inputs.ts';

export const inputs = {
  reelCount: reelCountInput,
  gauge: reelGaugeInput,
  lengthMetres: reelLengthInput,
  nativeFps: nativeFpsInput,
  runningSeconds: {
    kind: 'optional-quantity',
    label: 'Running time of one reel',
    unit: 's',
    entryUnit: 'min',
    minimum: 0,
    maximum: 36_000,
    default: '',
    accepted: '3:20 or 4 min',
    help: 'At its native rate, if you know it. Empty: from gauge, length and native rate. A bare number means minutes.',
  },
  pricePerReel: pricePerReelInput,
  pricePerMinute: pricePerMinuteInput,
  minuteRule: minuteRuleInput,
  carrierCount: {
    kind: 'count',
    label: 'Discs, sticks or drives',
    minimum: 0,
    maximum: 10_000,
    default: '1',
    accepted: '1 or 2',
    help: 'How many are handed over. A file to keep is large: the customer’s sheet on options says how large.',
  },
  carrierPrice: carrierPriceInput,
  fixedPrice: fixedPriceInput,
  discountPercent: {
    kind: 'quantity',
    label: 'Discount',
    unit: 'percent',
    minimum: 0,
    maximum: 100,
    default: '0',
    accepted: '0 or 7.5 %',
    help: 'Taken off the sum of the lines.',
  },
  minimumCharge: minimumChargeInput,
  taxPercent: taxPercentInput,
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
export type Exact = ExactOf<typeof inputs>;
