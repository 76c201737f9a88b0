import { gaugeMisfit } from '../core/gauge-fit.ts';
import { GAUGES } from '../core/gauges.ts';
import type { GaugeId } from '../core/gauges/gauge.ts';
import { formatNumber } from '../core/quantity/format.ts';

function isGauge(text: string): text is GaugeId {
  return Object.hasOwn(GAUGES, text);
}

/**
 * The warning when the reel on the table does not go on the projector, from the choices of the bench.
 *
 * @returns undefined when both gauges agree or one of them is not said
 */
export function gaugeWarning(reelGauge: string, projectorGauge: string): string | undefined {
  if (!isGauge(reelGauge) || !isGauge(projectorGauge)) return undefined;
  const misfit = gaugeMisfit(reelGauge, projectorGauge);
  if (misfit === undefined) return undefined;
  const [reel, projector] = [GAUGES[reelGauge].name, GAUGES[projectorGauge].name];
  const start = `Do not thread this reel: it is ${reel}, and the projector is set for ${projector}.`;
  switch (misfit.kind) {
    case 'width':
      return `${start} The films are not equally wide.`;
    case 'step': {
      const [own, other] = [misfit.reelStepMillimetres, misfit.projectorStepMillimetres];
      return `${start} The claw moves ${formatNumber(other, 4)} mm for each frame and the holes are ${formatNumber(own, 4)} mm apart, so it strikes the film between the holes and tears it. Change every part that belongs to the gauge, or use another machine.`;
    }
    case 'picture-touched':
      return `${start} Gate and rollers of the one touch the film where the picture of the other lies.`;
  }
}
