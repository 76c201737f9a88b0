import { describe, expect, it } from 'vitest';
import { bandMotionOfPictures } from '../../src/core/file/band-motion.ts';
import { filmPosition, type FilmPosition } from '../../src/core/file/film-position.ts';
import { measuredKeepList } from '../../src/core/file/measured-keep-list.ts';
import { filmAt } from '../tools/film-clip/projector.ts';
import { drawPlan, filmClip, type ClipPlan, type FilmClip } from '../tools/film-clip/film-clip.ts';
import type { SceneKind } from '../tools/film-clip/scenes.ts';
import { enteredBench, isNearCameraRate } from './file/film-clips.ts';

/** Plans that can be read, with scenes of our own. */
function plansWith(
  count: number,
  scenes: ClipPlan['scenes'],
  seconds: number,
  from = 302,
): readonly (readonly [number, ClipPlan])[] {
  const plans: [number, ClipPlan][] = [];
  for (let seed = from; plans.length < count; seed += 1) {
    const plan = drawPlan(seed, seconds);
    if (!isNearCameraRate(plan)) plans.push([seed, { ...plan, scenes }]);
  }
  return plans;
}

function positionOf(clip: FilmClip): FilmPosition {
  const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
  const position = filmPosition(motion, enteredBench(clip.plan));
  if (position.kind === 'refused') throw new Error(position.reason);
  return position;
}

describe('a stretch in which nothing changes', () => {
  const middle = 120;
  const cases = (['still-without-grain', 'black'] as const).flatMap((kind: SceneKind) =>
    plansWith(
      3,
      [
        { kind: 'moving', filmFrames: 90 },
        { kind, filmFrames: middle },
        { kind: 'moving', filmFrames: 400 },
      ],
      16,
    ).map(([seed, plan]) => [kind, seed, plan] as const),
  );

  it.each(cases)('%s, seed %d, is marked as not told', (_, seed, plan) => {
    const clip = filmClip(plan, seed);
    const { motion, position } = {
      motion: bandMotionOfPictures(clip.pictures, clip.frameSeconds),
      position: positionOf(clip),
    };
    const list = measuredKeepList(position, motion, enteredBench(plan));
    const within = clip.truth
      .map(({ main }, frame) => ({ main, seconds: clip.frameSeconds[frame]! }))
      .filter(({ main }) => main >= 90 && main < 90 + middle);
    const told = within.filter(
      ({ seconds }) =>
        !list.stretches.some(
          ({ fromSeconds, toSeconds, isCountSure }) =>
            !isCountSure && seconds >= fromSeconds && seconds <= toSeconds,
        ),
    );
    expect(within.length).toBeGreaterThan(100);
    expect(told.length / within.length).toBeLessThanOrEqual(0.05);
    // Outside the stretch and a second around it nearly all is told.
    const whole = list.frames.filter(({ status }) => status !== 'bridged');
    expect(whole.length).toBeGreaterThan(
      list.frames.length - middle - 3.5 * plan.projector.filmFps,
    );
  });
});

describe('a tie', () => {
  const [[seed, plan]] = plansWith(
    1,
    [
      { kind: 'moving', filmFrames: 90 },
      { kind: 'black', filmFrames: 120 },
      { kind: 'moving', filmFrames: 400 },
    ],
    16,
  ) as [readonly [number, ClipPlan]];
  const clip = filmClip(plan, seed);
  const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
  const bench = enteredBench(plan);
  const position = positionOf(clip);
  const free = measuredKeepList(position, motion, bench);
  const zero = clip.truth[free.frames[0]!.cameraFrame]!.main;
  /** A film frame after the stretch, with a camera frame that shows it clean. */
  const after = free.frames.find(
    ({ cameraFrame, status }) =>
      status === 'whole' && clip.truth[cameraFrame]!.main > 90 + 120 + 40,
  )!;
  const counted = clip.truth[after.cameraFrame]!.main - zero;

  it('settles the count of a stretch', () => {
    expect(free.stretches.some(({ isCountSure }) => !isCountSure)).toBe(true);
    const ties = [{ filmFrame: counted, cameraFrame: after.cameraFrame }];
    const tied = measuredKeepList(position, motion, bench, ties);
    expect(tied.conflicts).toEqual([]);
    const between = tied.stretches.filter(({ place }) => place === 'between');
    expect(between.length).toBeGreaterThan(0);
    expect(between.every(({ isCountSure }) => isCountSure)).toBe(true);
    for (const { cameraFrame, filmFrame, status } of tied.frames)
      if (status === 'whole') expect(clip.truth[cameraFrame]!.main - zero).toBe(filmFrame);
  });

  it('moves the count of all that follows when the worker counts another number', () => {
    const ties = [{ filmFrame: counted + 2, cameraFrame: after.cameraFrame }];
    const tied = measuredKeepList(position, motion, bench, ties);
    expect(tied.frames.length - free.frames.length).toBe(counted + 2 - after.filmFrame);
    expect(
      tied.frames.find(({ cameraFrame }) => cameraFrame === after.cameraFrame)?.filmFrame,
    ).toBe(counted + 2);
  });

  it('is refused where it does not fit, and changes nothing', () => {
    const early = free.frames[10]!;
    for (const [tie, reason] of [
      [{ filmFrame: early.filmFrame + 1, cameraFrame: early.cameraFrame }, 'another-count'],
      [{ filmFrame: 5, cameraFrame: 1e6 }, 'outside'],
    ] as const) {
      const tied = measuredKeepList(position, motion, bench, [tie]);
      expect(tied.conflicts).toEqual([{ tie, reason }]);
      expect(tied.frames).toEqual(free.frames);
    }
  });
});

describe('a stretch that is not told', () => {
  const cases = plansWith(
    4,
    [
      { kind: 'moving', filmFrames: 90 },
      { kind: 'still-without-grain', filmFrames: 120 },
      { kind: 'moving', filmFrames: 400 },
    ],
    16,
    620,
  );

  it.each(cases)(
    'seed %d, says how many film frames were put there, and how sure that is',
    (seed, plan) => {
      const clip = filmClip(plan, seed);
      const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
      const list = measuredKeepList(positionOf(clip), motion, enteredBench(plan));
      const between = list.stretches.filter(({ place }) => place === 'between');
      expect(between.length).toBeGreaterThan(0);
      for (const { fromSeconds, toSeconds, filmFrames, plusMinusFrames, isCountSure } of between) {
        const at = (seconds: number): number => filmAt(plan.projector, seconds);
        const truly = at(toSeconds) - at(fromSeconds);
        // Half a film frame is rounding.
        expect(Math.abs(truly - filmFrames)).toBeLessThanOrEqual(plusMinusFrames + 0.6);
        expect(plusMinusFrames === 0).toBe(isCountSure);
        expect(plusMinusFrames).toBeLessThan(0.05 * truly + 1);
      }
    },
  );
});

/** Clips in which the film stands for half a second or more; set down before they were run. */
const STAND_SEEDS = 6100;

describe('film that stands', () => {
  const cases = plansWith(12, [{ kind: 'moving', filmFrames: 400 }], 7, STAND_SEEDS).map(
    ([seed, plan]) => {
      const { filmFps } = plan.projector;
      const from = Math.round(2.5 * filmFps) + (seed % 7);
      const length = Math.ceil(0.5 * filmFps) + 1 + (seed % 5);
      return [seed, plan, Array.from({ length }, (_, at) => from + at)] as const;
    },
  );
  const found: boolean[] = [];

  it.each(cases)('seed %d is marked, and film that runs is not', (seed, plan, stands) => {
    const read = (each: ClipPlan): readonly number[] => {
      const clip = filmClip(each, seed);
      const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
      const list = measuredKeepList(positionOf(clip), motion, enteredBench(each));
      const marked = list.frames.filter(({ seconds }) =>
        list.stands.some(
          ({ fromSeconds, toSeconds }) => seconds >= fromSeconds && seconds <= toSeconds,
        ),
      );
      return marked.map(({ cameraFrame }) => clip.truth[cameraFrame]!.main);
    };
    const marked = read({ ...plan, stands });
    const hit = stands.filter((film) => marked.includes(film)).length;
    found.push(hit >= 0.7 * stands.length);
    const beside = marked.filter((film) => film < stands[0]! - 2 || film > stands.at(-1)! + 1);
    expect(beside).toEqual([]);
    expect(read(plan)).toEqual([]);
  });

  it('is found in at least nine cases of ten', () => {
    expect(found).toHaveLength(cases.length);
    expect(found.filter(Boolean).length).toBeGreaterThanOrEqual(0.9 * cases.length);
  });
});

describe('a claw that misses once', () => {
  const stands = [60, 100, 131];
  const cases = plansWith(2, [{ kind: 'moving', filmFrames: 600 }], 9, 340).map(
    // Where the noise is strong beside the grain, a single miss is not noticed.
    ([seed, plan]) => [seed, { ...plan, stock: { ...plan.stock, grain: 0.03 }, stands }] as const,
  );

  it.each(cases)('seed %d is marked where the camera took enough pairs', (seed, plan) => {
    const clip = filmClip(plan, seed);
    const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
    const list = measuredKeepList(positionOf(clip), motion, enteredBench(plan));
    const marked = list.frames
      .filter(({ isSamePicture }) => isSamePicture)
      .map(({ cameraFrame }) => clip.truth[cameraFrame]!.main);
    expect(list.comparedFrames).toBeGreaterThan(list.frames.length / 2);
    expect(marked).toEqual(expect.arrayContaining(stands));
    // A slow scene may be asked about too, but rarely.
    expect(marked.length - stands.length).toBeLessThan(0.05 * list.frames.length);
  });
});
