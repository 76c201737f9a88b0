// Answers that are printed only as far as they are known.
import { formatQuantity } from '../../../quantity/format.ts';
import {
  roundToUncertainty,
  type RoundingDirection,
} from '../../../quantity/round-to-uncertainty.ts';
import { convertUnit, type UnitName } from '../../../quantity/units.ts';
import { duration, quantity } from '../../machine/answers.ts';
import type { AnswerBody } from '../../machine/define-worksheet.ts';

/** Enough digits for a number that is rounded already. */
const ALL_DIGITS = 12;

/** A value printed only as far as it is known. The bare value keeps its digits for further sums. */
export function knownQuantity(
  value: number,
  error: number,
  unit: UnitName,
  direction: RoundingDirection = 'nearest',
): AnswerBody {
  const shown = quantity(roundToUncertainty(value, error, direction), unit, ALL_DIGITS);
  if (shown.imperial === undefined) return { ...shown, value };
  const inFeet = (metres: number): number => convertUnit(metres, unit, 'ft');
  const feet = roundToUncertainty(inFeet(value), inFeet(error), direction);
  const text = formatQuantity(feet, 'ft', ALL_DIGITS);
  return { ...shown, value, imperial: { ...shown.imperial, text, value: inFeet(value) } };
}

/** A running time, s, printed only as far as it is known. */
export function knownDuration(
  seconds: number,
  error: number,
  direction: RoundingDirection = 'nearest',
): AnswerBody {
  return { ...duration(roundToUncertainty(seconds, error, direction)), value: seconds };
}
