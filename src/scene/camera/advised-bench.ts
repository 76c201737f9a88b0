import { adviseSetting } from '../../core/gate/setting-advice.ts';
import { shutterOf, type BenchNumbers } from './setting.ts';

/**
 * The bench with the whole setting that works: film rate, camera rate and exposure time together.
 *
 * @param rippleLimitPercent  ripple that is still accepted, %
 * @returns the bench; undefined where nothing usual works, or where nothing has to change
 */
export function advisedBench(
  bench: BenchNumbers,
  rippleLimitPercent: number,
): BenchNumbers | undefined {
  const { filmFps, cameraFps, exposureSeconds, readoutSeconds } = bench;
  const advice = adviseSetting(
    { filmFps, cameraFps, exposureSeconds },
    { shutter: shutterOf(bench), readoutSeconds, rippleLimitPercent },
  );
  if (advice.kind !== 'works' || advice.change === 'none') return undefined;
  return { ...bench, ...advice.setting };
}
