import { makeGateLight } from '../gate/gate-light.ts';
import { wholeStarts } from '../gate/whole-starts.ts';
import { BANDS, LAGS, type BandMotion } from './band-motion.ts';
import type { FilmPosition } from './film-position.ts';
import type { RecordingBench } from './recording-bench.ts';
import type { FilmTrack } from './film-track.ts';

/** A kept camera frame, as far as comparing needs it. */
interface Kept {
  readonly cameraFrame: number;
  readonly slot: number;
  readonly status: string;
}

/** Seconds on either side over which the noise is measured. */
const NOISE_SECONDS = 2;
/** Pairs of camera frames of one film frame that tell the noise. */
const FEWEST_PAIRS = 20;
/** Two pictures that differ by less than this many times the noise may be one. */
const NOISE_TIMES = 1.5;
/** Share of the bands in which they must: film that runs moves something somewhere. */
const LEAST_BANDS_SHARE = 0.9;
/** Pairs of one band that tell its noise, and bands that must be known. */
const FEWEST_PAIRS_OF_BAND = 4;
const FEWEST_BANDS = 8;
/** And by less than this share of what is usual between film frames there. */
const USUAL_SHARE = 0.3;

/** Film frames on either side that tell what is usual. */
const NEIGHBOURS = 8;

/** Mean square of the difference between two camera frames in one band, if they are near enough. */
function bandDifference(
  gram: BandMotion['gram'],
  band: number,
  early: number,
  late: number,
): number | undefined {
  if (late - early > LAGS || late <= early) return undefined;
  let sum = 0;
  for (let a = early + 1; a <= late; a += 1) {
    for (let b = early + 1; b <= a; b += 1)
      sum += (a === b ? 1 : 2) * (gram[(a * BANDS + band) * LAGS + a - b] ?? 0);
  }
  return sum;
}

function medianOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** Noise of one band between two camera frames that hold the same film frame, with the slot. */
interface NoisePair {
  readonly band: number;
  readonly slot: number;
  readonly square: number;
}

/** Pairs of neighbouring camera frames of which a band holds one and the same film frame, whole, in order. */
function* noisePairs(
  motion: BandMotion,
  position: FilmPosition,
  track: FilmTrack,
  bench: RecordingBench,
): Generator<NoisePair, void, undefined> {
  const { filmFps, slots } = position;
  const ranges = wholeStarts(makeGateLight(1, bench.shutter), bench.exposureSeconds * filmFps, 0);
  const readout = position.readoutSeconds * filmFps;
  const wholeIn = (start: number): number | undefined => {
    for (const film of [Math.floor(start), Math.floor(start) + 1])
      if (
        ranges.some((range) => start - film > range.fromSeconds && start - film < range.toSeconds)
      )
        return film;
    return undefined;
  };
  for (let frame = 1; frame < slots.slotOfFrame.length; frame += 1) {
    const slot = slots.slotOfFrame[frame] ?? 0;
    const at = slot - track.firstSlot;
    if (slots.slotOfFrame[frame - 1] !== slot - 1 || track.isBridged[at] !== 0 || at < 1) continue;
    for (let band = 0; band < BANDS; band += 1) {
      const delay = ((band + 0.5) / BANDS) * readout;
      const film = wholeIn((track.positions[at] ?? NaN) + delay);
      if (film === undefined || film !== wholeIn((track.positions[at - 1] ?? NaN) + delay))
        continue;
      const square = motion.gram[(frame * BANDS + band) * LAGS] ?? 0;
      if (square > 0) yield { band, slot, square };
    }
  }
}

/** The pairs within reach of a slot; asked for slots that go up, it keeps no others. */
function pairsNear(
  pairs: Generator<NoisePair, void, undefined>,
  reach: number,
): (slot: number) => readonly NoisePair[] {
  let near: NoisePair[] = [];
  let coming = pairs.next();
  return (slot) => {
    while (coming.done !== true && coming.value.slot <= slot + reach) {
      near.push(coming.value);
      coming = pairs.next();
    }
    const first = near.findIndex((pair) => pair.slot >= slot - reach);
    if (first > 0) near = near.slice(first);
    else if (first < 0) near = [];
    return near;
  };
}

/** How a kept picture differs from the one before: each band, and the middle one. */
interface Difference {
  readonly bands: readonly (number | undefined)[];
  readonly square: number;
}

/** Whether nearly all bands differ by no more than their noise. */
function isNoiseOnly(bands: readonly (number | undefined)[], pairs: readonly NoisePair[]): boolean {
  let known = 0;
  let quiet = 0;
  for (const [band, square] of bands.entries()) {
    const own = pairs.filter((pair) => pair.band === band);
    if (square === undefined || own.length < FEWEST_PAIRS_OF_BAND) continue;
    known += 1;
    if (square < NOISE_TIMES * medianOf(own.map((pair) => pair.square))) quiet += 1;
  }
  return known >= FEWEST_BANDS && quiet >= LEAST_BANDS_SHARE * known;
}

/**
 * Film frames whose kept picture hardly differs from the one before: the film may have stood still in
 * the gate (a torn hole, a lost loop). A still on the film is no such case, its grain changes.
 *
 * Model: the noise is the middle mean square between camera frames of one film frame, within two
 * seconds, band by band; two kept frames may be one picture where nine bands in ten differ by less than
 * 1.5 times their noise, and the middle one by less than 0.3 of what neighbouring film frames do there.
 * Longer stands are found otherwise.
 *
 * @param motion    what was kept of the pictures
 * @param position  measured film position
 * @param track     the film through the recording
 * @param kept      kept camera frames in order
 * @param bench     projector and camera
 * @returns 1 for each such film frame; and how many could be compared
 */
export function samePictures(
  motion: BandMotion,
  position: FilmPosition,
  track: FilmTrack,
  kept: readonly Kept[],
  bench: RecordingBench,
): { readonly same: Uint8Array; readonly compared: number } {
  const reach = NOISE_SECONDS * position.slots.cameraFps;
  const near = pairsNear(noisePairs(motion, position, track, bench), reach);
  const differenceAt = (index: number): Difference | undefined => {
    const frame = kept[index];
    const before = kept[index - 1];
    if (frame === undefined || before === undefined || frame.status === 'bridged') return undefined;
    const bands = Array.from({ length: BANDS }, (_, band) =>
      bandDifference(motion.gram, band, before.cameraFrame, frame.cameraFrame),
    );
    const squares = bands.filter((square) => square !== undefined);
    return squares.length === 0 ? undefined : { bands, square: medianOf(squares) };
  };
  // The neighbours on either side alone: an hour has 65,000 film frames.
  const beside: (Difference | undefined)[] = Array.from({ length: NEIGHBOURS + 1 }, (_, index) =>
    differenceAt(index - 1),
  );
  const same = new Uint8Array(kept.length);
  let compared = 0;
  for (const [index, { slot }] of kept.entries()) {
    beside.push(differenceAt(index + NEIGHBOURS));
    if (beside.length > 2 * NEIGHBOURS + 1) beside.shift();
    const difference = beside.at(-1 - NEIGHBOURS);
    const pairs = near(slot);
    if (difference === undefined || pairs.length < FEWEST_PAIRS) continue;
    compared += 1;
    const usual = beside.filter((each) => each !== undefined).map(({ square }) => square);
    if (difference.square >= USUAL_SHARE * medianOf(usual)) continue;
    if (isNoiseOnly(difference.bands, pairs)) same[index] = 1;
  }
  return { same, compared };
}
