// Inputs about a job that several worksheets and the bench share: the reel on the table, the bench's
// own times and its own prices.
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import { GAUGE_NAMES } from '../../core/reel/gauges.ts';
import type { ChoiceInput, CountInput, QuantityInput } from '../machine/types.ts';

export const reelCountInput = {
  kind: 'count',
  label: 'Reels like this one',
  minimum: 1,
  maximum: 10_000,
  default: '1',
  accepted: '1 or 12',
  help: 'Reels of one gauge and about one length. Work out a mixed box in parts, and add them.',
  bench: 'reel.count',
} as const satisfies CountInput;

export const reelGaugeInput = {
  kind: 'choice',
  label: 'Gauge of the reel',
  options: GAUGE_NAMES,
  default: 'super-8',
  help: 'As named on the bench, not as written on the box.',
  bench: 'reel.gauge',
} as const satisfies ChoiceInput<GaugeId>;

export const reelLengthInput = {
  kind: 'quantity',
  label: 'Length of one reel',
  unit: 'm',
  minimum: 0.1,
  maximum: 2000,
  default: '50 ft',
  accepted: '50 ft or 15 m',
  help: 'The length worksheets find it from the reel. A bare number means metres.',
  bench: 'reel.lengthMetres',
} as const satisfies QuantityInput;

export const handlingInput = {
  kind: 'quantity',
  label: 'Handling of one reel',
  unit: 's',
  entryUnit: 'min',
  minimum: 0,
  maximum: 86_400,
  default: '15',
  accepted: '15, 15 min or 1 h',
  help: 'Examine, mend, clean, thread, rewind. Time yourself on five reels. A bare number means minutes.',
  bench: 'times.handlingSeconds',
} as const satisfies QuantityInput;

export const afterWorkInput = {
  kind: 'quantity',
  label: 'After-work for one reel',
  unit: 's',
  entryUnit: 'min',
  minimum: 0,
  maximum: 86_400,
  default: '20',
  accepted: '20, 20 min or 1 h',
  help: 'Whole frames, retiming, sound, checks and copies: the time that you sit there. A bare number means minutes.',
  bench: 'times.afterWorkSeconds',
} as const satisfies QuantityInput;

export const repeatPercentInput = {
  kind: 'quantity',
  label: 'Reels that must be run again',
  unit: 'percent',
  minimum: 0,
  maximum: 100,
  default: '10',
  accepted: '10 or 5 %',
  help: 'Lost loops, wrong exposure, dirt. Count them for a month.',
  bench: 'times.repeatPercent',
} as const satisfies QuantityInput;

export const hoursPerDayInput = {
  kind: 'quantity',
  label: 'Hours a day on the job',
  unit: 'h',
  minimum: 0.25,
  maximum: 24,
  default: '5',
  accepted: '5, 7.5 or 90 min',
  help: 'What remains after post, telephone and tea.',
  bench: 'times.hoursPerDay',
} as const satisfies QuantityInput;

const money = {
  kind: 'quantity',
  unit: 'money',
  minimum: 0,
  maximum: 100_000,
} as const;

export const pricePerReelInput = {
  ...money,
  label: 'Price of a reel',
  default: '4.00',
  accepted: '4 or 4.50',
  help: 'For handling, whatever its length.',
  bench: 'prices.perReel',
} as const satisfies QuantityInput;

export const pricePerMinuteInput = {
  ...money,
  label: 'Price of a minute',
  default: '1.20',
  accepted: '1.20',
  help: 'For each minute of film at its native rate.',
  bench: 'prices.perMinute',
} as const satisfies QuantityInput;

export const minuteRuleInput = {
  kind: 'choice',
  label: 'Minutes are counted',
  options: { exact: 'exactly', begun: 'begun minutes of each reel' },
  default: 'exact',
  help: 'Say on the offer which of the two you use.',
  bench: 'prices.minuteRule',
} as const satisfies ChoiceInput<'exact' | 'begun'>;

export const carrierPriceInput = {
  ...money,
  label: 'Price of each disc, stick or drive',
  default: '9.00',
  accepted: '9 or 9.50',
  help: 'Including writing and checking it.',
  bench: 'prices.carrier',
} as const satisfies QuantityInput;

export const fixedPriceInput = {
  ...money,
  label: 'Fixed part',
  default: '10.00',
  accepted: '10',
  help: 'Once for the job: taking in, packing, paper.',
  bench: 'prices.fixed',
} as const satisfies QuantityInput;

export const minimumChargeInput = {
  ...money,
  label: 'Minimum charge',
  default: '25.00',
  accepted: '25',
  help: 'Before tax, after the discount.',
  bench: 'prices.minimum',
} as const satisfies QuantityInput;

export const taxPercentInput = {
  kind: 'quantity',
  label: 'Tax',
  unit: 'percent',
  minimum: 0,
  maximum: 100,
  default: '0',
  accepted: '0 or 19 %',
  help: 'On the sum before tax; 0 if you charge none. Your own tax rules decide.',
  bench: 'prices.taxPercent',
} as const satisfies QuantityInput;
