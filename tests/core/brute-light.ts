/**
 * Brute-force light, written without the core: used by the tests to check the closed forms.
 * Everything here counts small steps.
 */

/** Blade edges of an equal shutter: whether light passes at a time, hard edges, pulldown blade centred on 0. */
export function isLit(
  seconds: number,
  filmFps: number,
  flashesPerFrame: number,
  openFraction: number,
): boolean {
  const flashes = seconds * filmFps * flashesPerFrame;
  const phase = flashes - Math.floor(flashes);
  const half = (1 - openFraction) / 2;
  return phase >= half && phase < 1 - half;
}

/** Sum of a level over a stretch of time by the midpoint rule. */
export function sumLight(
  level: (seconds: number) => number,
  startSeconds: number,
  endSeconds: number,
  steps: number,
): number {
  const step = (endSeconds - startSeconds) / steps;
  let sum = 0;
  for (let index = 0; index < steps; index += 1) sum += level(startSeconds + (index + 0.5) * step);
  return sum * step;
}

/** Least and most light over evenly spaced starts. */
export function sweepStarts(
  collect: (startSeconds: number) => number,
  spanSeconds: number,
  starts: number,
): { readonly least: number; readonly most: number } {
  let least = Infinity;
  let most = -Infinity;
  for (let index = 0; index < starts; index += 1) {
    const light = collect((index / starts) * spanSeconds);
    least = Math.min(least, light);
    most = Math.max(most, light);
  }
  return { least, most };
}
