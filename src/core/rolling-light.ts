import { lightBetween, lightLevel, type GateLight } from './gate-light.ts';

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

  const corners = [from, startSeconds + rise, end - rise, to];
  const period = light.periodSeconds;
  for (let cycle = Math.floor(from / period); cycle * period < to; cycle += 1) {
    for (const { seconds } of light.points) corners.push(cycle * period + seconds);
  }
  const ordered = corners.filter((time) => time >= from && time <= to).sort((a, b) => a - b);
  let sum = 0;
  for (const [index, a] of ordered.entries()) {
    const b = ordered[index + 1];
    if (b === undefined || b === a) continue;
    const middle = (a + b) / 2;
    const reach = (b - a) / (2 * Math.sqrt(3));
    const early = lightLevel(light, middle - reach) * rowsAt(middle - reach);
    const late = lightLevel(light, middle + reach) * rowsAt(middle + reach);
    sum += ((b - a) / 2) * (early + late);
  }
  return sum;
}
