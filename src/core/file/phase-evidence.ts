import { BANDS, LAGS, PICTURE_COLUMNS, PICTURE_ROWS } from './band-motion.ts';
import { phaseModels, type FilmStep, type PhaseModels } from './phase-models.ts';

/** Whose bands are heard: all of them, or every other one as two witnesses of the same film. */
export const WITNESSES = ['all', 'even', 'odd'] as const;
export type Witness = (typeof WITNESSES)[number];

/** Least that a phase can count, nats below the best: a cut or a splice must not outweigh a second. */
const EVIDENCE_CAP = 8;
/** Evidence is kept in a byte, so that an hour of recording takes tens of megabytes. */
const STEPS_PER_NAT = 31;

/**
 * How well each phase of the film explains each camera frame, in steps of 1/31 nat below the best
 * phase: index slot × phases + phase. Coarse evidence has no witnesses but all bands together.
 */
export interface PhaseEvidence {
  readonly phases: number;
  readonly slots: number;
  readonly steps: Readonly<Record<Witness, Uint8Array>>;
  /** How much better the best phase explains each slot than a picture that never changes, nats. */
  readonly changeNats: Float32Array;
  /** Bands that were heard at each slot: neither behind a blade nor darkened all of a sudden. */
  readonly heardBands: Uint8Array;
  /** Evidence of the best phases, summed over the slots, nats: tells one bench from another. */
  readonly bestNats: number;
}

/** Nats of one step. */
export const NATS_PER_STEP = 1 / STEPS_PER_NAT;

/** What the evidence is looked for in. */
export interface EvidenceQuestion {
  readonly gram: Float64Array | Float32Array;
  readonly slotOfFrame: Int32Array;
  readonly slots: number;
  readonly step: FilmStep;
  /** Readout time in film frames. */
  readonly readoutFilmFrames: number;
  readonly phases: number;
  /** Every other band and fewer kinds of change: enough to find the film rate. */
  readonly isCoarse: boolean;
}

/** Frames on either side that the window holds where the recording has them. */
const REACH = LAGS / 2;
/** Fewer differences tell nothing of the phase. */
const FEWEST_DIFFERENCES = 3;
/** Neighbouring windows and pixels hold much the same, so only a share of the pixels counts. */
const COUNTED_PIXELS = ((PICTURE_COLUMNS * PICTURE_ROWS) / BANDS) * 0.1;
/** Noise that every band is taken to have, so that flat and clipped parts say nothing. */
const LEAST_NOISE = 1e-6;

/** Camera frames around one whose band shows a picture of its own, and their slots from it. */
interface Shown {
  readonly frames: number[];
  readonly slots: number[];
  /** One bit for each slot of the window that shows a picture. */
  pattern: number;
}

/** Finds what a band shows around a camera frame; a difference of exactly 0 shows nothing new. */
function findShown(question: EvidenceQuestion, frame: number, band: number, into: Shown): void {
  const { gram, slotOfFrame } = question;
  const slot = slotOfFrame[frame] ?? 0;
  into.frames.length = 0;
  into.slots.length = 0;
  into.pattern = 0;
  const last = Math.min(slotOfFrame.length - 1, frame + REACH);
  for (let each = Math.max(0, frame - REACH); each <= last; each += 1) {
    const away = (slotOfFrame[each] ?? 0) - slot;
    if (away < -REACH || away > REACH) continue;
    if (each > 0 && (gram[(each * BANDS + band) * LAGS] ?? 0) === 0) continue;
    into.frames.push(each);
    into.slots.push(away);
    into.pattern |= 1 << (away + REACH);
  }
}

/** Products of the differences between the pictures shown, row by row of the upper triangle. */
function fillProducts(
  gram: EvidenceQuestion['gram'],
  { frames }: Shown,
  band: number,
  into: Float64Array,
): void {
  let at = 0;
  for (let row = 1; row < frames.length; row += 1) {
    for (let column = row; column < frames.length; column += 1) {
      const later = frames[column] ?? 0;
      const lag = later - (frames[row] ?? 0);
      const noise = column === row ? 2 : column - row === 1 ? -1 : 0;
      into[at] = (gram[(later * BANDS + band) * LAGS + lag] ?? 0) + noise * LEAST_NOISE;
      at += 1;
    }
  }
}

/** Adds the evidence of a band for each phase, at its own time of readout. */
function addShifted(raw: Float64Array, phases: number, gone: number, into: Float64Array): void {
  const shift = gone * phases;
  const whole = Math.floor(shift);
  const rest = shift - whole;
  for (let phase = 0; phase < phases; phase += 1) {
    const near = raw[(phase + whole) % phases] ?? 0;
    const far = raw[(phase + whole + 1) % phases] ?? 0;
    into[phase] = (into[phase] ?? 0) + near * (1 - rest) + far * rest;
  }
}

function largest(values: Float64Array): number {
  let most = -Infinity;
  for (const value of values) if (value > most) most = value;
  return most;
}

/**
 * Evidence of one band for each phase, nats, with any change and without one. Flicker of any strength β
 * may be in it, S + β²·δ·δᵀ; the strength that fits best has a closed form.
 */
function bandEvidence(
  models: PhaseModels,
  products: Float64Array,
  into: Float64Array,
  still: Float64Array,
): void {
  const { phases, modelsPerPhase, numbersPerModel, numbers, flicker, flickers, differences } =
    models;
  let at = 0;
  for (let phase = 0; phase < phases; phase += 1) {
    const isFlickering = flickers[phase] === 1;
    let least = Infinity;
    let leastStill = Infinity;
    for (let model = 0; model < modelsPerPhase; model += 1) {
      let sum = 0;
      if (!isFlickering) {
        for (let index = 0; index < numbersPerModel; index += 1)
          sum += (numbers[at + index] ?? 0) * (products[index] ?? 0);
      } else {
        let inFlicker = 0;
        for (let index = 0; index < numbersPerModel; index += 1) {
          const product = products[index] ?? 0;
          sum += (numbers[at + index] ?? 0) * product;
          inFlicker += (flicker[at + index] ?? 0) * product;
        }
        if (sum < differences * inFlicker) {
          const taken = (differences - sum / inFlicker) / (differences - 1);
          sum -= taken * inFlicker;
          // What follows only makes it larger.
          if (sum < least) sum *= Math.pow(1 - taken, -1 / differences);
        }
      }
      at += numbersPerModel;
      if (sum < least) least = sum;
      if (model < models.stillModels) leastStill = least;
    }
    into[phase] = -0.5 * COUNTED_PIXELS * Math.log(least / differences);
    still[phase] = -0.5 * COUNTED_PIXELS * Math.log(leastStill / differences);
  }
}

function asSteps(evidence: Float64Array, into: Uint8Array, start: number): void {
  let best = -Infinity;
  for (const value of evidence) if (value > best) best = value;
  for (let phase = 0; phase < evidence.length; phase += 1) {
    const below = Math.min(EVIDENCE_CAP, best - (evidence[phase] ?? 0));
    into[start + phase] = Math.round(below * STEPS_PER_NAT);
  }
}

/**
 * Evidence of the pictures for each phase of the film at each camera frame.
 *
 * Model: the products of the seven camera frames around it, fewer at the ends, beside dropped frames
 * and where a band shows nothing new, against {@link phaseModels}; bands are added, each at its own time of readout. What a phase
 * loses against the best is capped at 8 nats.
 *
 * @param question  the products, their slots, film and camera
 * @returns the evidence
 */
export function phaseEvidence(question: EvidenceQuestion): PhaseEvidence {
  const { gram, slotOfFrame, slots, step, readoutFilmFrames, phases, isCoarse } = question;
  // To find the rate all bands are heard together; two witnesses more would take 9 MB for an hour.
  const heard = isCoarse ? (['all'] as const) : WITNESSES;
  const room = isCoarse ? 0 : slots * phases;
  const steps = {
    all: new Uint8Array(slots * phases),
    even: new Uint8Array(room),
    odd: new Uint8Array(room),
  };
  const changeNats = new Float32Array(slots);
  const heardBands = new Uint8Array(slots);
  let bestNats = 0;
  const known = new Map<number, PhaseModels>();
  const products = new Float64Array((LAGS * (LAGS + 1)) / 2);
  const raw = new Float64Array(phases);
  const rawStill = new Float64Array(phases);
  const still = new Float64Array(phases);
  const sums = {
    all: new Float64Array(phases),
    even: new Float64Array(phases),
    odd: new Float64Array(phases),
  };
  const shown: Shown = { frames: [], slots: [], pattern: 0 };
  for (let frame = 0; frame < slotOfFrame.length; frame += 1) {
    const slot = slotOfFrame[frame] ?? 0;
    sums.even.fill(0);
    sums.odd.fill(0);
    still.fill(0);
    for (let band = 0; band < BANDS; band += isCoarse ? 2 : 1) {
      findShown(question, frame, band, shown);
      if (shown.frames.length <= FEWEST_DIFFERENCES) continue;
      heardBands[slot] = (heardBands[slot] ?? 0) + 1;
      const models = known.get(shown.pattern) ?? phaseModels(step, shown.slots, phases, isCoarse);
      known.set(shown.pattern, models);
      fillProducts(gram, shown, band, products);
      const gone = ((band + 0.5) / BANDS) * readoutFilmFrames;
      bandEvidence(models, products, raw, rawStill);
      addShifted(rawStill, phases, gone, still);
      addShifted(raw, phases, gone, band % 2 === 0 ? sums.even : sums.odd);
    }
    for (let phase = 0; phase < phases; phase += 1)
      sums.all[phase] = (sums.even[phase] ?? 0) + (sums.odd[phase] ?? 0);
    const start = slot * phases;
    changeNats[slot] = largest(sums.all) - largest(still);
    bestNats += largest(sums.all);
    for (const witness of heard) asSteps(sums[witness], steps[witness], start);
  }
  return { phases, slots, steps, changeNats, heardBands, bestNats };
}
