import { gaugeFitsProjector } from '../../core/reel/gauge-fits-projector.ts';
import { GAUGES } from '../../core/reel/gauges.ts';
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';

function isGauge(text: string): text is GaugeId {
  return Object.hasOwn(GAUGES, text);
}

/**
 * The warning when the reel on the table must not go on the projector, from the choices of the bench.
 *
 * @returns undefined when the reel may be threaded or one of the gauges is not said
 */
export function gaugeWarning(reelGauge: string, projectorGauge: string): string | undefined {
  if (!isGauge(reelGauge) || !isGauge(projectorGauge)) return undefined;
  const { level, sentence } = gaugeFitsProjector(reelGauge, projectorGauge);
  return level === 'stop' ? sentence : undefined;
}
