// A few small recordings, drawn once: they need nothing of what reads them.
import type { BandLight } from '../../src/core/gate/band-light.ts';
import type { GateBench } from '../../src/core/gate/recording/gate-reading.ts';
import { drawPlan, filmClip, type ClipPlan, type FilmClip } from '../tools/film-clip/film-clip.ts';
import {
  CLUB_GATE,
  openingsOf,
  simulateGate,
  type GateScene,
  type SimulatedGate,
} from './gate/recording/simulated-gate.ts';

const PLAIN: GateScene = { ...CLUB_GATE, seconds: 6 };

interface DrawnGate {
  readonly title: string;
  readonly scene: GateScene;
  /** The recording as it was drawn. */
  readonly truth: SimulatedGate;
  /** The recording as it is read. */
  readonly light: BandLight;
  readonly bench: Omit<GateBench, 'shutter'>;
  readonly flashes: number;
  readonly open: number;
}

const gate = (
  title: string,
  changes: Partial<GateScene>,
  flashes = 3,
  nominalFilmFps = 18,
  asFiled: (light: SimulatedGate) => BandLight = (light) => light,
): DrawnGate => {
  const scene = { ...PLAIN, ...changes };
  const { exposureSeconds, lampHz } = scene;
  const truth = simulateGate(scene);
  return {
    title,
    scene,
    truth,
    light: asFiled(truth),
    bench: {
      nominalFilmFps,
      flashesPerFrame: flashes,
      exposureSeconds,
      mainsHz: lampHz > 110 ? 60 : 50,
      rippleLimitPercent: 1,
    },
    flashes,
    open: 0.5,
  };
};

const matched = 1 / (3 * PLAIN.filmFps);

/** Every third frame is the mean of what was filmed then and just before. */
function blended(light: SimulatedGate): BandLight {
  const inFrame = light.bands.length / light.frameSeconds.length;
  const bands = light.bands.map((value, at) =>
    Math.floor(at / inFrame) % 3 === 1 ? (value + light.bands[at - inFrame]!) / 2 : value,
  );
  return { ...light, bands };
}

/** As short as a clip may be: they add little to the time of the tests. */
const SHORTEST = { seconds: 4.1 };

/** Empty gates: one for each cause, mixtures, and some that are refused. */
export const drawnGates: readonly DrawnGate[] = [
  gate('exposure off the flashes', {}),
  gate(
    'two blades at thirty',
    {
      seed: 5,
      filmFps: 24.3,
      openings: openingsOf(2, 0.5),
      cameraFps: 30_000 / 1001,
      exposureSeconds: 1 / 60,
      readoutSeconds: 0.008,
      lampHz: 120,
      wanderShare: 0.008,
      trendShare: 0.004,
    },
    2,
    24,
  ),
  gate('a blade wider', {
    seed: 7,
    cameraFps: 50,
    openings: openingsOf(3, 0.5, 0.05),
    exposureSeconds: matched,
  }),
  gate('a lamp on the mains', {
    seed: 11,
    exposureSeconds: matched,
    lampHz: 100.07,
    lampDepth: 0.2,
  }),
  gate('an exposure that hunts', { seed: 13, exposureSeconds: matched, huntingShare: 0.08 }),
  gate('a lamp that warms up', { seed: 17, exposureSeconds: matched, driftShare: 0.05 }),
  gate('even light', { seed: 19, exposureSeconds: matched }),
  gate(
    'all rows at once',
    {
      seed: 23,
      filmFps: 16.6,
      readoutSeconds: 0,
      exposureSeconds: 1 / 60,
    },
    3,
    50 / 3,
  ),
  gate('blades and lamp beside a lamp that warms up', {
    ...SHORTEST,
    seed: 62,
    filmFps: 18.3,
    exposureSeconds: 1 / 60,
    readoutSeconds: 0.014,
    lampHz: 99.95,
    lampDepth: 0.25,
    driftShare: 0.04,
  }),
  gate(
    'frames blended by the camera',
    { ...SHORTEST, seed: 69, cameraFps: 50, exposureSeconds: 1 / 60 },
    3,
    18,
    blended,
  ),
  gate('a finger', {
    ...SHORTEST,
    seed: 72,
    finger: { fromSeconds: 2, toSeconds: 3, fromHeight: 0.5, toHeight: 0.7, darkShare: 0.2 },
  }),
  gate('a lamp that fades', {
    ...SHORTEST,
    seed: 70,
    exposureSeconds: matched,
    readoutSeconds: 0.01,
    driftShare: -0.3,
  }),
  gate('an exposure that hunts by half', {
    ...SHORTEST,
    seed: 71,
    exposureSeconds: matched,
    readoutSeconds: 0.01,
    huntingShare: 0.5,
  }),
];

const clip = (
  title: string,
  seed: number,
  seconds: number,
  changes: Partial<ClipPlan> = {},
): { readonly title: string; readonly clip: FilmClip } => ({
  title,
  clip: filmClip({ ...drawPlan(seed, seconds), ...changes }, seed),
});

/** Films filmed off a gate: moving scenes, and one with a stretch that tells nothing. */
export const drawnClips = [
  clip('first', 306, 5),
  clip('second', 311, 5),
  clip('with a still stretch', 304, 7, {
    scenes: [
      { kind: 'moving', filmFrames: 45 },
      { kind: 'still-without-grain', filmFrames: 30 },
      { kind: 'moving', filmFrames: 400 },
    ],
  }),
];
