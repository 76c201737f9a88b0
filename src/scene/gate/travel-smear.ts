import { CODE_OF_LIGHT, LIGHT_OF_CODE, WHITE } from '../transfer.ts';
import type { FilmFaults } from './film-faults.ts';
import { PITCH } from './place-in-gate.ts';

/** Three film frames as developed, RGBA: the one before, the one in the gate, the one after. */
export type ThreeFrames = readonly [Uint8ClampedArray, Uint8ClampedArray, Uint8ClampedArray];

/** Adds a row of the strip, in light, to a running sum. Rows are counted from the top of this frame. */
function addRow(
  sum: Float32Array,
  [before, now, after]: ThreeFrames,
  row: number,
  width: number,
  height: number,
  sign: number,
): void {
  const pitch = Math.round(height * PITCH);
  const isAfter = row >= height;
  const frame = isAfter ? after : row < 0 ? before : now;
  const place = isAfter ? row - pitch : row < 0 ? row + pitch : row;
  // The line between two frames is black.
  if (place < 0 || place >= height) return;
  const start = place * width * 4;
  for (let column = 0, at = start; column < width * 3; column += 3, at += 4) {
    sum[column] = (sum[column] ?? 0) + sign * (LIGHT_OF_CODE[frame[at] ?? 0] ?? 0);
    sum[column + 1] = (sum[column + 1] ?? 0) + sign * (LIGHT_OF_CODE[frame[at + 1] ?? 0] ?? 0);
    sum[column + 2] = (sum[column + 2] ?? 0) + sign * (LIGHT_OF_CODE[frame[at + 2] ?? 0] ?? 0);
  }
}

/**
 * Light on moving film: at the start of the move the frame leaves upwards and the line and the next frame
 * come in from below; at its end the frame arrives, with the one before it above. The smear is the mean
 * of the strip over the way that is lit; rows run along with one sum, so its length costs nothing.
 *
 * Exact where an exposure takes in the whole film-frame cycle.
 */
export function travelSmear(
  frames: ThreeFrames,
  width: number,
  height: number,
  { smearUp, smearDown, smearShare }: FilmFaults,
): Uint8ClampedArray<ArrayBuffer> {
  const pitch = Math.round(height * PITCH);
  const up = Math.round(smearUp * pitch);
  const down = Math.round(smearDown * pitch);
  const now = frames[1];
  const out = new Uint8ClampedArray(now.length);
  if (up + down === 0) {
    out.set(now);
    return out;
  }
  const sum = new Float32Array(width * 3);
  const add = (row: number, sign: number): void => {
    addRow(sum, frames, row, width, height, sign);
  };
  // Before the first row: the smear of row −1, up over rows −1 … up − 2, down over −down … −1.
  for (let row = -1; row < up - 1; row += 1) add(row, 1);
  for (let row = -down; row < 0; row += 1) add(row, 1);
  const still = 1 - smearShare;
  const each = smearShare / (up + down);
  for (let row = 0; row < height; row += 1) {
    if (up > 0) {
      add(row - 1, -1);
      add(row + up - 1, 1);
    }
    if (down > 0) {
      add(row - down, -1);
      add(row, 1);
    }
    const start = row * width * 4;
    for (let column = 0, at = start; column < width * 3; column += 3, at += 4) {
      for (let layer = 0; layer < 3; layer += 1) {
        const rest = still * (LIGHT_OF_CODE[now[at + layer] ?? 0] ?? 0);
        const light = rest + each * (sum[column + layer] ?? 0);
        out[at + layer] = CODE_OF_LIGHT[Math.max(0, Math.min(WHITE, Math.round(light)))] ?? 0;
      }
      out[at + 3] = 255;
    }
  }
  return out;
}
