// Clips of film filmed off a projector, as rows of small pictures whose truth is known. Everything is
// simulated here: the shutter, the motor, the film, the camera; nothing comes from the book's own code.
import { filmRun, type Camera, type TrueFrame } from './camera.ts';
import { makeChance, type Chance } from './chance.ts';
import { drawSwings, openingsOf, runProjector, type Projector } from './projector.ts';
import { drawFilm, type FilmStock, type ScenePlan } from './scenes.ts';

/** What a clip is made from. */
export interface ClipPlan {
  readonly flashes: number;
  readonly open: number;
  /** Width of the pulldown blade, film frames. */
  readonly pulldown: number;
  readonly projector: Projector;
  readonly camera: Camera;
  readonly stock: FilmStock;
  readonly scenes: readonly ScenePlan[];
  readonly seconds: number;
  /** Film frames at which the claw misses, so that the picture before shows again. */
  readonly stands?: readonly number[];
}

export interface FilmClip {
  readonly plan: ClipPlan;
  readonly frameSeconds: Float64Array;
  readonly pictures: readonly Float64Array[];
  readonly truth: readonly TrueFrame[];
}

export const CAMERA_RATES = [25, 30_000 / 1001, 50, 60_000 / 1001] as const;

/** Scenes of a few seconds each until the film is long enough. */
function drawScenes(chance: Chance, filmFrames: number): readonly ScenePlan[] {
  const plans: ScenePlan[] = [];
  let left = filmFrames;
  while (left > 0) {
    const length = Math.round(chance.between(40, 140));
    const kind =
      plans.at(-1)?.kind === 'fade-out'
        ? 'fade-in'
        : chance.pick([
            'moving',
            'moving',
            'moving',
            'moving',
            'still-with-grain',
            'fade-out',
          ] as const);
    const filmFramesOfScene = kind.startsWith('fade') ? 18 : length;
    plans.push({ kind: plans.length === 0 ? 'moving' : kind, filmFrames: filmFramesOfScene });
    left -= filmFramesOfScene;
  }
  return plans;
}

/** A clip drawn by chance; every seed is another bench, film and camera. */
export function drawPlan(seed: number, seconds = 20): ClipPlan {
  const chance = makeChance(seed);
  const cameraFps = CAMERA_RATES[seed % CAMERA_RATES.length]!;
  const filmFps = chance.pick([16, 50 / 3, 18, 18, 18, 24]) * chance.between(0.985, 1.015);
  const flashes = chance.pick(filmFps > 21 ? [2, 3] : [2, 3, 3]);
  const open = chance.between(0.42, 0.62);
  const isUnequal = chance.happens(0.35);
  const pulldown = ((1 - open) / flashes) * (isUnequal ? chance.between(1.05, 1.4) : 1);
  const readoutSeconds = chance.happens(0.3) ? 0 : chance.between(0.002, 0.02);
  const oneFlash = 1 / (filmFps * flashes);
  const exposureSeconds = chance.pick([
    oneFlash,
    oneFlash,
    1 / 50,
    1 / 60,
    Math.min(2 * oneFlash, 0.9 / cameraFps),
  ]);
  return {
    flashes,
    open,
    pulldown,
    projector: {
      filmFps,
      openings: openingsOf(flashes, open, pulldown),
      edge: chance.happens(0.5) ? 0 : chance.between(0.01, 0.05),
      swings: drawSwings(chance, chance.pick([0, 0.002, 0.005, 0.01, 0.02])),
      trend: chance.happens(0.3) ? chance.between(-0.0006, 0.0006) : 0,
      start: chance.between(0, 1),
    },
    camera: {
      cameraFps,
      exposureSeconds: Math.min(exposureSeconds, 0.97 / cameraFps),
      readoutSeconds,
      noise: chance.between(0.0003, 0.002),
      curve: chance.pick(['gamma', 'video', 'steep']),
      followsLight: chance.happens(0.4),
      coarseness: chance.happens(0.3) ? chance.between(0.002, 0.008) : 0,
    },
    stock: {
      grain: chance.between(0.006, 0.03),
      weave: chance.between(0, 0.004),
      dust: Math.floor(chance.between(0, 4)),
      isScratched: chance.happens(0.3),
    },
    scenes: drawScenes(chance, Math.ceil(filmFps * seconds * 1.05) + 4),
    seconds,
  };
}

/** Films a plan. */
export function filmClip(plan: ClipPlan, seed: number): FilmClip {
  const chance = makeChance(seed + 500_000);
  const { cameraFps, exposureSeconds, readoutSeconds } = plan.camera;
  const run = runProjector(plan.projector, plan.seconds + exposureSeconds + readoutSeconds + 0.1);
  const drawn = drawFilm(chance, plan.scenes, plan.stock);
  const missed = (film: number): number =>
    (plan.stands ?? []).filter((stand) => stand <= film).length;
  const draw = (film: number): Float64Array => drawn(film - missed(film));
  const frames = Math.floor(plan.seconds * cameraFps);
  const shots = [...filmRun(chance, run, draw, plan.camera, frames)];
  return {
    plan,
    frameSeconds: Float64Array.from(shots, (_, frame) => frame / cameraFps),
    pictures: shots.map(({ picture }) => picture),
    truth: shots.map(({ truth }) => truth),
  };
}
