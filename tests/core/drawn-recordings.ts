// A few small recordings, drawn once: they need nothing of what reads them.
import type { BandLight } from '../../src/core/gate/band-light.ts';
import type { GateBench } from '../../src/core/gate/recording/gate-reading.ts';
import { drawPlan, filmClip, type ClipPlan, type FilmClip } from '../tools/film-clip/film-clip.ts';
import {
  CLUB_GATE,
  openingsOf,
  simulateGate,
  type GateScene,
} from './gate/recording/simulated-gate.ts';

const PLAIN: GateScene = { ...CLUB_GATE, seconds: 6 };

interface DrawnGate {
  readonly title: string;
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
): DrawnGate => {
  const scene = { ...PLAIN, ...changes };
  const { exposureSeconds, lampHz } = scene;
  return {
    title,
    light: simulateGate(scene),
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

/** Empty gates: one for each cause, and two that are refused. */
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
