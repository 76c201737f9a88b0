import { BAND_COUNT, type BandLight } from '../band-light.ts';
import type { GateRefusal, GateRefusalReason } from './gate-reading.ts';
import type { GateSamples } from './gate-samples.ts';

/** Shortest clip that is read, s and frames: a few turns of a slow beat. */
export const SHORTEST_SECONDS = 4;
const FEWEST_FRAMES = 90;

/** Most of the picture that may be at the top of the range, share. */
const MOST_CLIPPED = 0.01;

/** Most of the picture that may be black, and the least mean light, share of the range. */
const MOST_BLACK = 0.5;
const LEAST_LIGHT = 0.004;

/** Blocks in which something that moves is looked for, s. */
const BLOCK_SECONDS = 0.5;

/** A band that leaves the others for half a second by this share of the light has something in it. */
const MOVED_SHARE = 0.006;

/** It must stand out from what the noise of the recording does to a block. */
const MOVED_DEVIATIONS = 6;

/** It must be this part of the flicker at least, because a large flicker is never fitted to the last. */
const MOVED_PART = 0.12;

/** A refusal with nothing more to say than its reason, unless given. */
export function gateRefusal(
  reason: GateRefusalReason,
  details: Partial<Omit<GateRefusal, 'kind' | 'reason'>> = {},
): GateRefusal {
  return {
    kind: 'refusal',
    reason,
    seconds: undefined,
    band: undefined,
    answers: [],
    amount: undefined,
    ...details,
  };
}

/** What makes a recording useless before any sum: no light, too much light, too little time. */
export function unusableLight(light: BandLight, durationSeconds: number): GateRefusal | undefined {
  const frames = light.frameSeconds.length;
  if (durationSeconds < SHORTEST_SECONDS || frames < FEWEST_FRAMES) {
    return gateRefusal('too-short', { amount: durationSeconds });
  }
  if (light.clippedShare > MOST_CLIPPED) {
    return gateRefusal('clipped', { amount: light.clippedShare });
  }
  const bandMeans = new Float64Array(BAND_COUNT);
  for (let at = 0; at < light.bands.length; at += 1) {
    const band = at % BAND_COUNT;
    bandMeans[band] = (bandMeans[band] ?? 0) + (light.bands[at] ?? 0) / frames;
  }
  const darkest = bandMeans.indexOf(Math.min(...bandMeans));
  if ((light.blackShare ?? 0) > MOST_BLACK || Math.max(...bandMeans) < LEAST_LIGHT) {
    return gateRefusal('black', { amount: light.blackShare });
  }
  return (bandMeans[darkest] ?? 0) < LEAST_LIGHT
    ? gateRefusal('black', { band: darkest, amount: light.blackShare })
    : undefined;
}

/**
 * Something that moves in the gate, such as film, a finger or the camera itself: one band leaves the
 * others for longer than any flicker does.
 *
 * @param samples   the recording
 * @param residual  what the explanation leaves of its changes
 * @param flicker   change of light that was explained, peak to peak, share
 * @returns the refusal with time and band; undefined when nothing moves
 */
export function movingThing(
  samples: GateSamples,
  residual: Float64Array,
  flicker: number,
): GateRefusal | undefined {
  const framesInBlock = Math.max(1, Math.round(BLOCK_SECONDS * samples.cameraFps));
  const blocks = Math.floor(samples.count / framesInBlock);
  let quick = 0;
  for (let at = BAND_COUNT; at < residual.length; at += 1) {
    quick += ((residual[at] ?? 0) - (residual[at - BAND_COUNT] ?? 0)) ** 2 / 2;
  }
  const noise = Math.sqrt(quick / (residual.length - BAND_COUNT) / framesInBlock);
  const limit = Math.max(MOVED_SHARE, MOVED_DEVIATIONS * noise, MOVED_PART * flicker);
  let [largest, place, where] = [0, 0, 0];
  for (let block = 0; block < blocks; block += 1) {
    const means = new Float64Array(BAND_COUNT);
    const from = block * framesInBlock;
    for (let frame = from; frame < from + framesInBlock; frame += 1) {
      for (let band = 0; band < BAND_COUNT; band += 1) {
        means[band] =
          (means[band] ?? 0) + (residual[frame * BAND_COUNT + band] ?? 0) / framesInBlock;
      }
    }
    const common = means.reduce((sum, mean) => sum + mean, 0) / BAND_COUNT;
    for (const [band, mean] of means.entries()) {
      const away = Math.abs(mean - common);
      if (away > largest) [largest, place, where] = [away, from, band];
    }
  }
  if (largest <= limit) return undefined;
  return gateRefusal('something-moves', {
    seconds: samples.frameSeconds[place],
    band: where,
    amount: largest,
  });
}
