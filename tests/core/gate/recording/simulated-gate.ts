// Recordings of an empty gate, made by arithmetic of their own: every blade edge, every row, every
// sample of the picture. Nothing here comes from the core.

/** One opening of the shutter in film frames from the middle of the pulldown blade. */
export interface Opening {
  readonly from: number;
  readonly to: number;
}

export interface GateScene {
  readonly seed: number;
  readonly seconds: number;
  readonly filmFps: number;
  readonly openings: readonly Opening[];
  /** Film frames that a blade edge takes to cross the gate. */
  readonly wipe: number;
  /** The film rate wanders by at most this share, in three slow waves. */
  readonly wanderShare: number;
  /** The film rate rises by this share from the first second to the last. */
  readonly trendShare: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  readonly lampHz: number;
  /** (brightest − darkest) ÷ (brightest + darkest); 0 for a steady lamp. */
  readonly lampDepth: number;
  /** Change of brightness from start to end, share of the mean. */
  readonly driftShare: number;
  /** Swing of an automatic exposure that hunts, share of the mean; 0 for a fixed exposure. */
  readonly huntingShare: number;
  readonly huntingHz: number;
  /** Grain of one sample, share of its light. */
  readonly grainShare: number;
  /** The camera writes light to this power. */
  readonly toneExponent: number;
  /** The reader undoes this power. */
  readonly readExponent: number;
  /** Bits of a sample; 8 when left out. */
  readonly bits?: 8 | 10;
  /** Mean light of the lit gate, share of what the file can hold; 0.35 when left out. */
  readonly level?: number;
  /**
   * The coder of a low bit rate: a row of a block keeps its brightness from the frame before until it
   * is out by so many codes, and is then put right in steps of as many. It keeps no grain.
   */
  readonly codeStep?: number;
  /** Something that stands in the gate for a while. */
  readonly finger?: Finger;
  /** Start of each camera frame, s; evenly spaced when left out. */
  readonly startSeconds?: (frame: number) => number;
}

export interface Finger {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** Rows that it covers, shares of the picture height. */
  readonly fromHeight: number;
  readonly toHeight: number;
  /** Share of their light that it takes. */
  readonly darkShare: number;
}

export interface SimulatedGate {
  readonly frameSeconds: Float64Array;
  readonly bands: Float64Array;
  readonly clippedShare: number;
  readonly blackShare: number;
  /** Film frames gone by ÷ time, from the first camera frame to the end of the last. */
  readonly meanFilmFps: number;
  /** Film rate at any time, frames/s. */
  readonly filmFpsAt: (seconds: number) => number;
  /** Least and most gain of camera and lamp, each over the clip. */
  readonly gains: Float64Array;
}

const BANDS = 12;
const ROWS_IN_BAND = 4;
const SAMPLES_IN_ROW = 8;

/** Uniform 0–1 numbers that a seed repeats. */
export function seededUniform(seed: number): () => number {
  let state = (seed * 2654435761 + 12345) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normal numbers, mean 0, deviation 1. */
function seededNormal(uniform: () => number): () => number {
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}

/** Light from film position 0 to any other, level × film frames. */
export function gateLightUntil(
  openings: readonly Opening[],
  wipe: number,
): (position: number) => number {
  const edge = (past: number): number => {
    if (past <= -wipe / 2) return 0;
    if (past >= wipe / 2) return past;
    return (past + wipe / 2) ** 2 / (2 * wipe);
  };
  const inFrame = (phase: number): number => {
    let sum = 0;
    for (const { from, to } of openings) sum += edge(phase - from) - edge(phase - to);
    return sum;
  };
  const perFrame = inFrame(1);
  return (position) => {
    const whole = Math.floor(position);
    return whole * perFrame + inFrame(position - whole);
  };
}

/** Equal blades, and others where the pulldown blade is wider by a share of a film frame. */
export function openingsOf(
  flashes: number,
  openFraction: number,
  widerPulldown = 0,
): readonly Opening[] {
  const open = openFraction / flashes;
  const dark = 1 - openFraction;
  const pulldown = dark / flashes + widerPulldown;
  const other = flashes === 1 ? 0 : (dark - pulldown) / (flashes - 1);
  return Array.from({ length: flashes }, (_, index) => {
    const from = pulldown / 2 + index * (open + other);
    return { from, to: from + open };
  });
}

/** Film position at any time, frames. */
function motion(scene: GateScene, uniform: () => number) {
  const waves = [0.17, 0.5, 1.3].map((hz) => ({
    turn: 2 * Math.PI * hz,
    start: 2 * Math.PI * uniform(),
  }));
  const start = uniform();
  const { filmFps, wanderShare, trendShare, seconds } = scene;
  const positionAt = (time: number): number => {
    let run = time + (trendShare * (time ** 2 / seconds - time)) / 2;
    for (const wave of waves) {
      run +=
        ((wanderShare / 3) * (Math.cos(wave.start) - Math.cos(wave.turn * time + wave.start))) /
        wave.turn;
    }
    return start + filmFps * run;
  };
  const fpsAt = (time: number): number => {
    let rate = 1 + trendShare * (time / seconds - 0.5);
    for (const wave of waves) rate += (wanderShare / 3) * Math.sin(wave.turn * time + wave.start);
    return filmFps * rate;
  };
  return { positionAt, fpsAt };
}

/** Gain of lamp and camera in each camera frame: a slow drift, and an exposure that hunts in steps. */
function gainsOf(scene: GateScene, count: number, uniform: () => number): Float64Array {
  const gains = new Float64Array(count);
  const phase = 6 * uniform();
  let gain = 0;
  for (let frame = 0; frame < count; frame += 1) {
    const time = frame / scene.cameraFps;
    const turn = 2 * Math.PI * scene.huntingHz * time + phase + 1.5 * Math.sin(0.9 * time);
    const wanted = scene.huntingShare * Math.sin(turn) * (0.6 + 0.4 * Math.sin(1.7 * time + phase));
    gain += (Math.round(wanted * 60) / 60 - gain) * Math.min(1, 9 / scene.cameraFps);
    gains[frame] = (1 + gain) * (1 + scene.driftShare * (time / scene.seconds - 0.5));
  }
  return gains;
}

const LAMP_STEPS = 64;

/** Share of light that a finger leaves to a row. */
function covered(finger: Finger | undefined, seconds: number, height: number): number {
  if (finger === undefined) return 1;
  const isThere = seconds >= finger.fromSeconds && seconds < finger.toSeconds;
  const isCovered = height >= finger.fromHeight && height < finger.toHeight;
  return isThere && isCovered ? 1 - finger.darkShare : 1;
}

const FRAMES_BETWEEN_KEYS = 50;

type RowCoder = (frame: number, row: number, codes: readonly number[]) => readonly number[];

/** What a coder with little room makes of the codes of a row: held until they are out by a step. */
function rowCoder(scene: GateScene, unevenness: Float64Array): RowCoder | undefined {
  const step = scene.codeStep;
  if (step === undefined) return undefined;
  const held = new Float64Array(BANDS * ROWS_IN_BAND);
  const texture = unevenness.map((share) => share ** (1 / scene.toneExponent));
  return (frame, row, codes) => {
    const from = row * SAMPLES_IN_ROW;
    let [sum, usual] = [0, 0];
    for (const [sample, code] of codes.entries()) {
      sum += code;
      usual += texture[from + sample]!;
    }
    const wanted = sum / usual;
    const isKey = frame % FRAMES_BETWEEN_KEYS === 0;
    const off = isKey ? wanted - held[row]! : step * Math.round((wanted - held[row]!) / step);
    held[row]! += off;
    return codes.map((_, sample) => held[row]! * texture[from + sample]!);
  };
}

/** What the camera files of a lit, empty gate. */
export function simulateGate(scene: GateScene): SimulatedGate {
  const uniform = seededUniform(scene.seed);
  const normal = seededNormal(uniform);
  const { positionAt, fpsAt } = motion(scene, uniform);
  const until = gateLightUntil(scene.openings, scene.wipe);
  const mean = until(1);
  const { cameraFps, exposureSeconds, readoutSeconds, lampDepth, lampHz } = scene;
  const count = Math.floor(scene.seconds * cameraFps);
  const gains = gainsOf(scene, count, uniform);
  const lampPhase = 2 * Math.PI * uniform();
  const rows = BANDS * ROWS_IN_BAND;
  // Uneven lighting of the gate: it stands still and must not be taken for flicker.
  const unevenness = Float64Array.from(
    { length: rows * SAMPLES_IN_ROW },
    () => 0.8 + 0.2 * uniform(),
  );

  // Mean of the lamp over a step, not its level in the middle.
  const stepAngle = (Math.PI * lampHz * exposureSeconds) / LAMP_STEPS;
  const lampSwing = (lampDepth * Math.sin(stepAngle)) / stepAngle;

  const rowLight = (start: number): number => {
    const end = start + exposureSeconds;
    let sum = 0;
    if (lampDepth === 0) sum = until(positionAt(end)) - until(positionAt(start));
    else {
      let before = until(positionAt(start));
      for (let step = 1; step <= LAMP_STEPS; step += 1) {
        const time = start + (exposureSeconds * step) / LAMP_STEPS;
        const after = until(positionAt(time));
        const middle = time - exposureSeconds / LAMP_STEPS / 2;
        const lamp = 1 + lampSwing * Math.sin(2 * Math.PI * lampHz * middle + lampPhase);
        sum += (after - before) * lamp;
        before = after;
      }
    }
    return sum / (fpsAt((start + end) / 2) * mean * exposureSeconds);
  };

  const bands = new Float64Array(count * BANDS);
  const frameSeconds = new Float64Array(count);
  const top = scene.bits === 10 ? 1023 : 255;
  const level = scene.level ?? 0.35;
  const coder = rowCoder(scene, unevenness);
  let clipped = 0;
  let black = 0;
  for (let frame = 0; frame < count; frame += 1) {
    const start = scene.startSeconds?.(frame) ?? frame / cameraFps;
    frameSeconds[frame] = start;
    for (let row = 0; row < rows; row += 1) {
      const height = (row + 0.5) / rows;
      const light =
        level *
        gains[frame]! *
        covered(scene.finger, start, height) *
        rowLight(start + height * readoutSeconds);
      const codes = Array.from({ length: SAMPLES_IN_ROW }, (_, sample) => {
        const seen =
          light * unevenness[row * SAMPLES_IN_ROW + sample]! * (1 + scene.grainShare * normal());
        return top * Math.min(1, Math.max(0, seen)) ** (1 / scene.toneExponent);
      });
      let sum = 0;
      for (const coded of coder === undefined ? codes : coder(frame, row, codes)) {
        const code = Math.round(coded);
        if (code >= top) clipped += 1;
        if (code <= 0) black += 1;
        sum += (code / top) ** scene.readExponent;
      }
      bands[frame * BANDS + Math.floor(row / ROWS_IN_BAND)]! += sum / SAMPLES_IN_ROW / ROWS_IN_BAND;
    }
  }
  const samples = count * rows * SAMPLES_IN_ROW;
  const end = count / cameraFps;
  return {
    frameSeconds,
    bands,
    clippedShare: clipped / samples,
    blackShare: black / samples,
    meanFilmFps: (positionAt(end) - positionAt(0)) / end,
    filmFpsAt: fpsAt,
    gains,
  };
}

/** The ripple that each cause makes by itself, peak to peak, share of the mean light. */
export interface TrueRipples {
  readonly shutter: number;
  readonly unequal: number;
  readonly lamp: number;
  readonly slow: number;
  /** Shutter, blades and lamp together, over every phase of film and lamp. */
  readonly together: number;
}

const PHASES = 720;
const LAMP_PHASES = 36;

const spread = (values: Float64Array): number => {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return most - least;
};

/** Sums over every phase: no harmonics, no fit. At the mean film rate unless another is given. */
export function trueRipples(
  scene: GateScene,
  gains: Float64Array,
  filmFps = scene.filmFps,
): TrueRipples {
  const until = gateLightUntil(scene.openings, scene.wipe);
  const flashes = scene.openings.length;
  const length = filmFps * scene.exposureSeconds;
  const scale = until(1) * length;
  const exposed = (phase: number): number => (until(phase + length) - until(phase)) / scale;
  const film = Float64Array.from({ length: PHASES }, (_, index) => exposed(index / PHASES));
  const flash = film.map((_, index) => {
    let sum = 0;
    for (let turn = 0; turn < flashes; turn += 1) {
      sum += exposed(index / PHASES + turn / flashes);
    }
    return sum / flashes;
  });
  let together = spread(film);
  let lamp = 0;
  if (scene.lampDepth > 0) {
    const steps = 96;
    const lampTurn = (2 * Math.PI * scene.lampHz * scene.exposureSeconds) / steps;
    let [least, most, leastLamp, mostLamp] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let index = 0; index < PHASES; index += 4) {
      // Light in phase with the lamp and a quarter turn off; every lamp phase is a mix of the two.
      let [cosine, sine] = [0, 0];
      for (let step = 0; step < steps; step += 1) {
        const from = index / PHASES + (length * step) / steps;
        const piece = (until(from + length / steps) - until(from)) / scale;
        cosine += piece * Math.cos(lampTurn * (step + 0.5));
        sine += piece * Math.sin(lampTurn * (step + 0.5));
      }
      for (let turn = 0; turn < LAMP_PHASES; turn += 1) {
        const angle = (2 * Math.PI * turn) / LAMP_PHASES;
        const added = scene.lampDepth * (cosine * Math.cos(angle) - sine * Math.sin(angle));
        leastLamp = Math.min(leastLamp, added);
        mostLamp = Math.max(mostLamp, added);
        least = Math.min(least, film[index]! + added);
        most = Math.max(most, film[index]! + added);
      }
    }
    lamp = mostLamp - leastLamp;
    together = most - least;
  }
  return {
    shutter: spread(flash),
    unequal: spread(film.map((value, index) => value - flash[index]!)),
    lamp,
    slow: spread(gains),
    together,
  };
}

const MOMENTS = 24;

/**
 * The ripples as the motor ran: their mean over moments of the clip, each at the film rate of its own.
 * Near a match a motor that wanders makes a flicker that its mean rate would not.
 */
export function ripplesOverRun(scene: GateScene, recording: SimulatedGate): TrueRipples {
  const moments = Array.from({ length: MOMENTS }, (_, index) => {
    const seconds = ((index + 0.5) / MOMENTS) * scene.seconds;
    return trueRipples(scene, recording.gains, recording.filmFpsAt(seconds));
  });
  const mean = (of: (ripples: TrueRipples) => number): number =>
    moments.reduce((sum, ripples) => sum + of(ripples) / MOMENTS, 0);
  return {
    shutter: mean(({ shutter }) => shutter),
    unequal: mean(({ unequal }) => unequal),
    lamp: mean(({ lamp }) => lamp),
    slow: mean(({ slow }) => slow),
    together: mean(({ together }) => together),
  };
}

/** A club projector: 18 frames/s, three blades, a camera at 25, an exposure a little too long. */
export const CLUB_GATE: GateScene = {
  seed: 3,
  seconds: 10,
  filmFps: 18.1,
  openings: openingsOf(3, 0.5),
  wipe: 0.02,
  wanderShare: 0.002,
  trendShare: 0,
  cameraFps: 25,
  exposureSeconds: 1 / 50,
  readoutSeconds: 0.012,
  lampHz: 100,
  lampDepth: 0,
  driftShare: 0,
  huntingShare: 0,
  huntingHz: 0.4,
  grainShare: 0.01,
  toneExponent: 2.2,
  readExponent: 2.2,
};
