// How sheets show a ripple that comes from the most and the least light of an exposure.
import type { Ripple } from '../../core/gate/ripple.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { quantity, words } from '../machine/answers.ts';
import type { AnswerBody } from '../machine/define-worksheet.ts';
import type { WorkingStep } from '../machine/types.ts';

const ms = (seconds: number): string => formatQuantity(seconds * 1000, 'ms', 4);

/** The ripple in stops, where there is a ratio. */
export function rippleStopsAnswer(stops: number | undefined): AnswerBody {
  return stops === undefined
    ? words('no limit', {
        note: 'Some exposures get no light at all, so there is no ratio.',
      })
    : quantity(stops, 'stop');
}

/** The step from the lit times to the ripple as it is printed. */
export function rippleStep(ripple: Ripple, printed: string): WorkingStep {
  return {
    words:
      'The lit time inside an exposure depends on where it starts. Most less least, divided by the mean, is the ripple.',
    sum: `(${ms(ripple.mostLight)} − ${ms(ripple.leastLight)}) ÷ ${ms(ripple.meanLight)} = ${printed}`,
  };
}
