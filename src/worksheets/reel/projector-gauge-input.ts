import { gaugeFitsProjector, type GaugeFit } from '../../core/reel/gauge-fits-projector.ts';
import { GAUGE_NAMES } from '../../core/reel/gauges.ts';
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import { words } from '../machine/answers.ts';
import type { AnswerBody } from '../machine/define-worksheet.ts';
import type { ChoiceInput, ValueOf } from '../machine/types.ts';

/** Gauge of the machine, on the sheets that ask whether a reel may be threaded. */
export const projectorGaugeInput = {
  kind: 'choice',
  label: 'Your projector runs',
  options: { 'not-said': 'not said', ...GAUGE_NAMES },
  default: 'not-said',
  help: 'A machine for several gauges: the one it is set to now. The sheet then says whether this film may be threaded.',
  bench: 'projector.gauge',
} as const satisfies ChoiceInput;

/** Whether a reel may be threaded; undefined while the projector is not said. */
export function projectorFit(
  reel: GaugeId,
  projector: ValueOf<typeof projectorGaugeInput>,
): GaugeFit | undefined {
  return projector === 'not-said' ? undefined : gaugeFitsProjector(reel, projector);
}

/** Label of the answer line on the projector. */
export const PROJECTOR_FIT_LABEL = 'On the projector';

/** The answer line on the projector. */
export function projectorFitAnswer(fit: GaugeFit | undefined): AnswerBody {
  return fit === undefined
    ? words('not yet: say above which gauge the projector runs')
    : words(fit.sentence, { level: fit.level });
}
