// The drawn cases by which the reading of an empty gate is judged.
import {
  openingsOf,
  ripplesOverRun,
  seededUniform,
  simulateGate,
  trueRipples,
  type GateScene,
  type SimulatedGate,
  type TrueRipples,
} from './simulated-gate.ts';

/**
 * Fixed on 2026-11-27 before film rate and readout time were told by finer lines, which was tried on
 * seeds from 500 000 to 505 000 only. Whoever tunes again on what they show must fix new ones first.
 */
export const JUDGED_SEEDS: readonly number[] = Array.from(
  { length: 200 },
  (_, index) => 2_640_019 + 31 * index,
);

/** Judged before; what was mended since was seen on some of them, so that they prove nothing new. */
export const SEEN_SEEDS: readonly number[] = Array.from(
  { length: 200 },
  (_, index) => 1_810_007 + 37 * index,
);

/** The first that were judged. */
export const FIRST_SEEDS: readonly number[] = Array.from(
  { length: 200 },
  (_, index) => 7001 + 13 * index,
);

export type TrueCause = 'shutter' | 'unequal' | 'lamp' | 'automatic-exposure' | 'drift' | 'none';

export interface GateCase {
  readonly seed: number;
  readonly cause: TrueCause;
  /** So little above the least change that calling it even is within what a ripple may be out by. */
  readonly mayPassForEven: boolean;
  readonly scene: GateScene;
  readonly nominalFilmFps: number;
  readonly flashes: number;
  readonly openFraction: number;
  readonly mainsHz: number;
  readonly recording: SimulatedGate;
  readonly ripples: TrueRipples;
}

const CAMERA_RATES = [25, 30_000 / 1001, 50, 60_000 / 1001];
const PROJECTORS = [
  [18, 3],
  [50 / 3, 3],
  [24, 2],
  [24, 3],
  [25, 2],
  [16, 3],
  [16, 4],
] as const;
const EXPOSURES = [
  1 / 25,
  1 / 30,
  1 / 40,
  1 / 45,
  1 / 50,
  1 / 60,
  1 / 75,
  1 / 80,
  1 / 90,
  1 / 100,
  1 / 125,
];

/** A change smaller than this is no flicker that anybody could see or would want named. */
const SMALLEST = 0.006;

/** A ripple may be out by so much, share of the mean. */
const RIPPLE_SLACK = 0.003;

function drawScene(
  seed: number,
  uniform: () => number,
): Omit<GateCase, 'recording' | 'ripples' | 'mayPassForEven'> {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)]!;
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  const draw = uniform();
  const cause: TrueCause =
    draw < 0.38
      ? 'shutter'
      : draw < 0.58
        ? 'unequal'
        : draw < 0.74
          ? 'lamp'
          : draw < 0.82
            ? 'automatic-exposure'
            : draw < 0.89
              ? 'drift'
              : 'none';
  const cameraFps = pick(CAMERA_RATES);
  const projectors = PROJECTORS.filter(([film, flashes]) => film * 0.96 * flashes >= cameraFps);
  const [nominalFilmFps, flashes] = pick(projectors);
  const filmFps = nominalFilmFps * between(0.96, 1.04);
  const flashRate = filmFps * flashes;
  const openFraction = between(0.42, 0.65);
  const dark = (1 - openFraction) / flashes;
  const isSoft = uniform() < 0.5;
  const mismatched = pick(EXPOSURES.filter((seconds) => seconds * cameraFps <= 1 + 1e-9));
  const matched = between(0.998, 1.002) / flashRate;
  const widerPulldown =
    cause === 'unequal'
      ? dark * between(0.08, 0.5)
      : cause === 'shutter' && uniform() < 0.25
        ? dark * between(0.01, 0.06)
        : 0;
  const steadyMotor = uniform();
  const wanderShare =
    steadyMotor < 0.25
      ? 0
      : steadyMotor < 0.6
        ? between(0.0005, 0.003)
        : steadyMotor < 0.85
          ? between(0.003, 0.01)
          : between(0.01, 0.02);
  const mainsHz = uniform() < 0.5 ? 50 : 60;
  const lampDepth = cause === 'lamp' ? between(0.1, 0.3) : 0;
  return {
    seed,
    cause,
    nominalFilmFps,
    flashes,
    openFraction,
    mainsHz,
    scene: {
      seed,
      seconds: 10,
      filmFps,
      openings: openingsOf(flashes, openFraction, widerPulldown),
      wipe: isSoft ? dark * between(0.1, 0.5) : dark * 0.01,
      wanderShare,
      trendShare: uniform() < 0.3 ? between(-0.006, 0.006) : 0,
      cameraFps,
      exposureSeconds: cause === 'shutter' ? mismatched : matched,
      readoutSeconds: uniform() < 0.2 ? 0 : Math.min(between(0.003, 0.02), 0.95 / cameraFps),
      lampHz: 2 * mainsHz * between(0.9985, 1.0015),
      lampDepth,
      driftShare:
        cause === 'drift'
          ? pick([-1, 1]) * between(0.02, 0.08)
          : uniform() < 0.2
            ? between(-0.002, 0.002)
            : 0,
      huntingShare: cause === 'automatic-exposure' ? between(0.04, 0.15) : 0,
      huntingHz: between(0.2, 0.7),
      grainShare: between(0.005, 0.03),
      toneExponent: pick([1.8, 2.2, 2.4]),
      readExponent: 2.2,
    },
  };
}

/** What the change of light comes from, as the drawing meant it, really is by far the largest part. */
function isPlain(cause: TrueCause, ripples: TrueRipples): boolean {
  const parts = {
    shutter: ripples.shutter,
    unequal: ripples.unequal,
    lamp: ripples.lamp,
    'automatic-exposure': ripples.slow,
    drift: ripples.slow,
  };
  if (cause === 'none') return Object.values(parts).every((part) => part < SMALLEST * 0.9);
  const main = parts[cause];
  const isSlow = cause === 'drift' || cause === 'automatic-exposure';
  const others = [
    ...(cause === 'shutter' ? [] : [ripples.shutter]),
    ...(cause === 'unequal' ? [] : [ripples.unequal]),
    ...(cause === 'lamp' ? [] : [ripples.lamp]),
    ...(isSlow ? [] : [ripples.slow]),
  ];
  return main > SMALLEST && others.every((part) => part < 0.6 * main);
}

/** The case of a seed: drawn again until its cause is plain. */
export function gateCase(seed: number): GateCase {
  const uniform = seededUniform(seed + 1_000_000);
  for (;;) {
    const drawn = drawScene(seed, uniform);
    // The reader's knowledge of the tone curve is exact here; a curve of its own is tested apart.
    const bits = seed % 2 === 0 ? 10 : 8;
    const scene: GateScene = { ...drawn.scene, readExponent: drawn.scene.toneExponent, bits };
    const gains = simulatedGains(scene);
    const ripples = trueRipples(scene, gains);
    if (!isPlain(drawn.cause, ripples)) continue;
    const recording = simulateGate(scene);
    const overRun = ripplesOverRun(scene, recording);
    // Drawn even at the mean rate; where the motor wanders off the match the picture flickers all the same.
    const isOffMatch = drawn.cause === 'none' && overRun.shutter >= SMALLEST;
    const cause = isOffMatch ? 'shutter' : drawn.cause;
    const mayPassForEven = isOffMatch && overRun.shutter < SMALLEST + RIPPLE_SLACK;
    return { ...drawn, cause, mayPassForEven, scene, recording, ripples: overRun };
  }
}

/** Bounds of what drift and hunting can do, without drawing the pictures. */
function simulatedGains(scene: GateScene): Float64Array {
  const half = Math.abs(scene.driftShare) / 2 + scene.huntingShare * 0.6;
  return Float64Array.of(1 - half, 1 + half);
}
