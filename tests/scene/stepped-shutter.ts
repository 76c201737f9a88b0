import type { BenchNumbers } from '../../src/scene/camera/setting.ts';

/**
 * The projector walked through in small steps of time, with blades of its own: nothing of it is the
 * product's. Level of the light, 0–1, at a part of the film-frame cycle that starts in the middle of the
 * pulldown blade.
 */
export function steppedLevel(bench: BenchNumbers): (cyclePart: number) => number {
  const blades: readonly (readonly [number, number])[] =
    bench.bladeDegrees ??
    Array.from({ length: bench.flashesPerFrame }, () => [
      (360 * bench.openFraction) / bench.flashesPerFrame,
      (360 * (1 - bench.openFraction)) / bench.flashesPerFrame,
    ]);
  const wipe = bench.bladeDegrees === undefined ? (bench.edgeWipeDegrees ?? 0) : 0;
  // Middles of the edges, in degrees from the middle of the last blade.
  const edges: { readonly at: number; readonly opens: boolean }[] = [];
  let at = (blades.at(-1)?.[1] ?? 0) / 2;
  for (const [open, closed] of blades) {
    edges.push({ at, opens: true }, { at: at + open, opens: false });
    at += open + closed;
  }
  return (cyclePart) => {
    const degrees = 360 * (cyclePart - Math.floor(cyclePart));
    let level = 0;
    for (const { at: edge, opens } of edges) {
      const passed =
        wipe === 0
          ? Number(degrees >= edge)
          : Math.min(1, Math.max(0, (degrees - edge) / wipe + 0.5));
      level += opens ? passed : -passed;
    }
    return level;
  };
}

/** Light of each film frame in one exposure, in steps; level × s. */
export function steppedExposure(
  bench: BenchNumbers,
  startSeconds: number,
  steps: number,
): ReadonlyMap<number, number> {
  const level = steppedLevel(bench);
  const light = new Map<number, number>();
  const step = bench.exposureSeconds / steps;
  for (let index = 0; index < steps; index += 1) {
    const cycle = (startSeconds + (index + 0.5) * step) * bench.filmFps;
    const filmFrame = Math.floor(cycle);
    light.set(filmFrame, (light.get(filmFrame) ?? 0) + level(cycle) * step);
  }
  return light;
}
