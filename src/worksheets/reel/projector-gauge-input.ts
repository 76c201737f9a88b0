import { gaugeFitsProjector, type GaugeFit } from '../../core/reel/gauge-fits-projector.ts';
import { GAUGE_NAMES } from '../../core/reel/gauges.ts';
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import { wordsAnswer } from '../machine/labelled-answers.ts';
import type { Answer, ChoiceInput } from '../machine/types.ts';

/** Gauge of the machine, on the sheets that ask whether a reel may be threaded. */
export const projectorGaugeInput = {
  kind: 'choice',
  label: 'Your projector runs',
  options: { 'not-said': 'not said', ...GAUGE_NAMES },
  default: 'not-said',
  help: 'A machine for several gauges: the one it is set to now. The sheet then says whether this film may be threaded.',
  bench: 'projector.gauge',
} as const satisfies ChoiceInput;

/** Gauge of the machine as a sheet receives it. */
export type ProjectorGauge = GaugeId | 'not-said';

/** Whether a reel may be threaded; undefined while the projector is not said. */
export function projectorFit(reel: GaugeId, projector: ProjectorGauge): GaugeFit | undefined {
  return projector === 'not-said' ? undefined : gaugeFitsProjector(reel, projector);
}

/** The answer line on the projector. */
export function projectorFitAnswer(reel: GaugeId, projector: ProjectorGauge): Answer {
  const fit = projectorFit(reel, projector);
  return fit === undefined
    ? wordsAnswer('On the projector', 'not yet: say above which gauge the projector runs')
    : wordsAnswer('On the projector', fit.sentence, { level: fit.level });
}
