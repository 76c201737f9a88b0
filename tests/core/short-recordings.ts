// Short recordings of every kind, drawn once: the sums that a reading is made of take a fraction of the time
// on them. Nothing here needs what reads them.
import type { BandLight } from '../../src/core/gate/band-light.ts';
import { drawPlan, filmClip, type ClipPlan, type FilmClip } from '../tools/film-clip/film-clip.ts';
import { PLAIN_SOUND, projectorSound, type ProjectorSound } from '../tools/projector-sound.ts';
import {
  CLUB_GATE,
  openingsOf,
  simulateGate,
  type GateScene,
  type SimulatedGate,
} from './gate/recording/simulated-gate.ts';

/** What makes most of the light's change, as it was drawn. */
export type DrawnFamily = 'shutter' | 'unequal' | 'lamp';

export interface ShortGate {
  readonly title: string;
  readonly scene: GateScene;
  readonly truth: SimulatedGate;
  readonly light: BandLight;
  readonly flashes: number;
  readonly nominalFilmFps: number;
  readonly open: number;
  readonly isInStep?: boolean;
  /** The strongest first. */
  readonly families: readonly [DrawnFamily, ...DrawnFamily[]];
}

interface Drawn {
  readonly title: string;
  readonly families: readonly [DrawnFamily, ...DrawnFamily[]];
  readonly flashes: number;
  readonly nominalFilmFps: number;
  readonly open?: number;
  /** Camera frames that the file does not hold. */
  readonly missing?: readonly number[];
  /** Flashes in step with the camera show one phase alone: neither film rate nor ripple can be told. */
  readonly isInStep?: boolean;
  readonly scene: Partial<GateScene>;
}

const NTSC_30 = 30_000 / 1001;
const NTSC_60 = 60_000 / 1001;
const PLAIN: GateScene = { ...CLUB_GATE, seconds: 1.6, wipe: 0.02, bits: 10 };

const DRAWN: readonly Drawn[] = [
  {
    title: 'two blades, readout 16 ms, a motor that picks up speed',
    families: ['shutter'],
    flashes: 2,
    nominalFilmFps: 24,
    scene: {
      seed: 41,
      filmFps: 24.4,
      openings: openingsOf(2, 0.5),
      readoutSeconds: 0.016,
      exposureSeconds: 1 / 60,
      trendShare: 0.01,
    },
  },
  {
    title: 'three blades, the second wider, readout 8 ms, frames missing',
    families: ['unequal'],
    flashes: 3,
    nominalFilmFps: 18,
    open: 0.55,
    missing: [11, 12, 60],
    scene: {
      seed: 42,
      filmFps: 17.8,
      openings: openingsOf(3, 0.55, 0.06),
      cameraFps: 50,
      readoutSeconds: 0.008,
      exposureSeconds: 1 / (3 * 17.8),
    },
  },
  {
    title: 'four blades and a lamp of 100 Hz that warms up',
    families: ['lamp'],
    flashes: 4,
    nominalFilmFps: 16,
    scene: {
      seed: 43,
      filmFps: 16.3,
      openings: openingsOf(4, 0.5),
      readoutSeconds: 0.012,
      exposureSeconds: 1 / (4 * 16.3),
      lampHz: 99.94,
      lampDepth: 0.3,
      driftShare: 0.03,
    },
  },
  {
    title: 'three blades and a lamp of 120 Hz off the flashes',
    families: ['shutter', 'lamp'],
    flashes: 3,
    nominalFilmFps: 18,
    scene: {
      seed: 44,
      filmFps: 18.2,
      cameraFps: NTSC_30,
      readoutSeconds: 0.014,
      exposureSeconds: 1 / 50,
      lampHz: 120.1,
      lampDepth: 0.25,
    },
  },
  {
    title: 'five blades, an exposure that hunts',
    families: ['shutter'],
    flashes: 5,
    nominalFilmFps: 50 / 3,
    open: 0.6,
    scene: {
      seed: 45,
      filmFps: 16.9,
      openings: openingsOf(5, 0.6),
      cameraFps: 50,
      readoutSeconds: 0.01,
      exposureSeconds: 1 / 60,
      huntingShare: 0.06,
      huntingHz: 0.7,
      wanderShare: 0.006,
    },
  },
  {
    title: 'two blades, a narrow inner one, all rows at once',
    families: ['unequal'],
    flashes: 2,
    nominalFilmFps: 24,
    scene: {
      seed: 46,
      filmFps: 24.3,
      openings: openingsOf(2, 0.5, 0.1),
      cameraFps: NTSC_60,
      readoutSeconds: 0,
      exposureSeconds: 1 / 80,
    },
  },
  {
    title: 'two blades in step with the camera, a lamp of 100 Hz',
    families: ['lamp'],
    flashes: 2,
    nominalFilmFps: 25,
    isInStep: true,
    scene: {
      seed: 47,
      filmFps: 25.04,
      openings: openingsOf(2, 0.6),
      wanderShare: 0,
      readoutSeconds: 0.004,
      exposureSeconds: 1 / 50,
      lampHz: 99.4,
      lampDepth: 0.3,
    },
  },
];

const without = (light: SimulatedGate, missing: readonly number[]): BandLight => {
  const bands = light.bands.length / light.frameSeconds.length;
  const kept = [...light.frameSeconds.keys()].filter((frame) => !missing.includes(frame));
  return {
    ...light,
    frameSeconds: Float64Array.from(kept, (frame) => light.frameSeconds[frame]!),
    bands: Float64Array.from(
      kept.flatMap((frame) => [...light.bands.subarray(frame * bands, (frame + 1) * bands)]),
    ),
  };
};

/** Short recordings of an empty gate, one of each kind. */
export const shortGates: readonly ShortGate[] = DRAWN.map(
  ({ missing = [], open = 0.5, scene: changes, ...rest }) => {
    const scene = { ...PLAIN, ...changes };
    const truth = simulateGate(scene);
    return { ...rest, open, scene, truth, light: without(truth, missing) };
  },
);

/** A film filmed off a gate, as it is filed. */
export interface ShortFilm {
  readonly title: string;
  readonly clip: FilmClip;
  /** Camera frames that the file does not hold. */
  readonly missing: readonly number[];
  /** Camera frames that the file holds a second time, in place of the next. */
  readonly doubled: readonly number[];
}

const film = (
  title: string,
  seed: number,
  changes: Partial<ClipPlan> = {},
  { missing = [], doubled = [] }: Partial<Pick<ShortFilm, 'missing' | 'doubled'>> = {},
): ShortFilm => ({
  title,
  clip: filmClip({ ...drawPlan(seed, 3), ...changes }, seed),
  missing,
  doubled,
});

/** Short recordings of film: one as it is meant, and two with what goes wrong. */
export const shortFilms: readonly ShortFilm[] = [
  film('plain', 324),
  film('frames missing and doubled', 329, {}, { missing: [20, 21, 50], doubled: [31, 60] }),
  film('a claw that misses for a second', 333, {
    stands: Array.from({ length: 18 }, (_, at) => 20 + at),
  }),
];

interface DrawnSound {
  readonly title: string;
  readonly range?: { readonly least: number; readonly most: number };
  readonly plan: Partial<ProjectorSound>;
  /** Says the film rate among its answers; none where the sound tells nothing. */
  readonly isRead: boolean;
}

const SOUNDS: readonly DrawnSound[] = [
  {
    title: 'a claw at 24',
    plan: { filmFps: 24, sampleRate: 16_000, seconds: 4.2003 },
    isRead: true,
  },
  {
    title: 'a claw of two teeth, the motor wandering',
    plan: { filmFps: 16, clicks: 2, wander: 0.012 },
    range: { least: 15, most: 34 },
    isRead: true,
  },
  {
    title: 'wind of three blades',
    plan: { clickLevel: 0, blades: 3, windLevel: 0.08 },
    range: { least: 16, most: 28 },
    isRead: true,
  },
  {
    title: 'claw and wind, mains of 60 Hz',
    plan: { blades: 2, windLevel: 0.05, mainsHertz: 60.05, mainsLevel: 0.2 },
    isRead: true,
  },
  {
    title: 'cut off at its limit',
    plan: { clickLevel: 0, hissLevel: 0.5, gain: 4 },
    isRead: false,
  },
  { title: 'a voice alone', plan: { clickLevel: 0, voiceLevel: 0.3 }, isRead: false },
];

/** Short sounds of a projector; four are told, two tell nothing. */
export const shortSounds = SOUNDS.map(({ plan: changes, ...rest }) => {
  const plan: ProjectorSound = { ...PLAIN_SOUND, sampleRate: 8000, seconds: 4.2, ...changes };
  return { ...rest, plan, ...projectorSound(plan, 9) };
});
