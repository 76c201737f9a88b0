// Chance that is the same for everyone: no clock and no random source, so that a film frame drawn
// twice is the same film frame.

/** A number of 0 to 1 for a pair of whole numbers, as good as thrown. */
export function chance(index: number, series = 0): number {
  let bits = (Math.imul(index, 374_761_393) + Math.imul(series, 668_265_263)) | 0;
  bits = Math.imul(bits ^ (bits >>> 13), 1_274_126_177);
  return ((bits ^ (bits >>> 16)) >>> 0) / 4_294_967_296;
}

/** A smooth wander between −1 and 1: one new value for each whole number of `time`. */
export function wander(time: number, series: number): number {
  const step = Math.floor(time);
  const part = time - step;
  const smooth = part * part * (3 - 2 * part);
  return (chance(step, series) * (1 - smooth) + chance(step + 1, series) * smooth) * 2 - 1;
}

/** From 0 to 1 with a soft start and a soft end. */
export function ease(part: number): number {
  return (1 - Math.cos(Math.PI * part)) / 2;
}

/** A number held between two others. */
export function held(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** The part of a number after its whole part, 0 to less than 1. */
export function inUnit(value: number): number {
  return value - Math.floor(value);
}
