// Inputs about a job that several worksheets and the bench share: the reel on the table, the bench's
// own times and its own prices.
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import { benchInput } from '../machine/bench-input.ts';
import type { ChoiceInput, CountInput, QuantityInput } from '../machine/types.ts';

export const reelCountInput = {
  ...benchInput('reel.count'),
  default: '1',
} as const satisfies CountInput;

export const reelGaugeInput = {
  ...benchInput('reel.gauge'),
  label: 'Gauge of the reel',
  default: 'super-8',
  help: 'As found on the film, not as written on the box.',
} as const satisfies ChoiceInput<GaugeId>;

export const reelLengthInput = {
  ...benchInput('reel.lengthMetres'),
  label: 'Length of one reel',
  default: '50 ft',
  accepted: '50 ft or 15 m',
  help: 'The length worksheets find it from the reel. A bare number means metres.',
} as const satisfies QuantityInput;

export const handlingInput = {
  ...benchInput('times.handlingSeconds'),
  default: '15',
} as const satisfies QuantityInput;

export const afterWorkInput = {
  ...benchInput('times.afterWorkSeconds'),
  default: '20',
} as const satisfies QuantityInput;

export const repeatPercentInput = {
  ...benchInput('times.repeatPercent'),
  default: '10',
} as const satisfies QuantityInput;

export const hoursPerDayInput = {
  ...benchInput('times.hoursPerDay'),
  default: '5',
} as const satisfies QuantityInput;

export const pricePerReelInput = {
  ...benchInput('prices.perReel'),
  default: '4.00',
} as const satisfies QuantityInput;

export const pricePerMinuteInput = {
  ...benchInput('prices.perMinute'),
  default: '1.20',
} as const satisfies QuantityInput;

export const minuteRuleInput = {
  ...benchInput('prices.minuteRule'),
  default: 'exact',
} as const satisfies ChoiceInput<'exact' | 'begun'>;

export const carrierPriceInput = {
  ...benchInput('prices.carrier'),
  default: '9.00',
} as const satisfies QuantityInput;

export const fixedPriceInput = {
  ...benchInput('prices.fixed'),
  default: '10.00',
} as const satisfies QuantityInput;

export const minimumChargeInput = {
  ...benchInput('prices.minimum'),
  default: '25.00',
} as const satisfies QuantityInput;

export const taxPercentInput = {
  ...benchInput('prices.taxPercent'),
  default: '0',
} as const satisfies QuantityInput;
