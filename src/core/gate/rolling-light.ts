import { lightBetween, type GateLight } from './gate-light.ts';

/**
 * Light that a whole rolling picture collects from a stretch of time, averaged over its rows,
 * level × s. The first row is exposed from `startSeconds`, the last one readout time later.
 *
 * Model: ∫ L(t)·w(t), where w is the share of the rows that are being exposed at t: it rises, holds
 * and falls in straight lines. Between corners L·w is a parabola, which two-point Gauss integration
 * takes exactly.
 *
 * @param light           gate light
 * @param startSeconds    start of the first row
 * @param exposureSeconds exposure time of every row
 * @param readoutSeconds  time from first row to last row; 0 for a global shutter
 * @param fromSeconds     start of the stretch that counts
 * @param toSeconds       end of the stretch that counts
 * @returns collected light, level × s; ≥ 0
 */
export function rollingLight(
  light: GateLight,
  startSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number,
  fromSeconds: number,
  toSeconds: number,
): number {
  const end = startSeconds + exposureSeconds + readoutSeconds;
  const from = Math.max(fromSeconds, startSeconds);
  const to = Math.min(toSeconds, end);
  if (to <= from) return 0;
  if (readoutSeconds === 0) return lightBetween(light, from, to);

  const rise = Math.min(exposureSeconds, readoutSeconds);
  const most = Math.min(1, exposureSeconds / readoutSeconds);
  const rowsAt = (time: number): number =>
    most * Math.max(0, Math.min(1, (time - startSeconds) / rise, (end - time) / rise));

  // Straight pieces of the light, cut where the share of rows changes its slope.
  const cuts = [startSeconds + rise, end - rise].sort((a, b) => a - b);
  const period = light.periodSeconds;
  let sum = 0;
  for (let cycle = Math.floor(from / period); cycle * period < to; cycle += 1) {
    const offset = cycle * period;
    for (let index = 1; index < light.points.length; index += 1) {
      const a = light.points[index - 1];
      const b = light.points[index];
      if (a === undefined || b === undefined || a.level + b.level === 0) continue;
      const pieceEnd = Math.min(to, offset + b.seconds);
      let pieceStart = Math.max(from, offset + a.seconds);
      if (pieceEnd <= pieceStart) continue;
      const slope = (b.level - a.level) / (b.seconds - a.seconds);
      const levelAt = (time: number): number => a.level + slope * (time - offset - a.seconds);
      for (const cut of [...cuts, pieceEnd]) {
        const stop = Math.min(cut, pieceEnd);
        if (stop <= pieceStart) continue;
        const middle = (pieceStart + stop) / 2;
        const reach = (stop - pieceStart) / (2 * Math.sqrt(3));
        const early = levelAt(middle - reach) * rowsAt(middle - reach);
        const late = levelAt(middle + reach) * rowsAt(middle + reach);
        sum += ((stop - pieceStart) / 2) * (early + late);
        pieceStart = stop;
      }
    }
  }
  return sum;
}
