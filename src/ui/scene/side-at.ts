import type { BenchNumbers } from '../../scene/camera/setting.ts';
import type { SideData } from '../../scene/scene-data.ts';

/** A side on another bench, at about the same film frame: numbers of camera frames differ with their rate. */
export function sideAt(usual: SideData, bench: BenchNumbers): SideData {
  if (usual.view !== 'camera') return { ...usual, bench };
  const seconds = usual.picture / usual.bench.cameraFps;
  return { ...usual, bench, picture: Math.round(seconds * bench.cameraFps) };
}
