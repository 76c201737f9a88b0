import { describe, expect, it } from 'vitest';
import { bandMotionOfPictures } from '../../src/core/file/band-motion.ts';
import { measuredKeepList } from '../../src/core/file/measured-keep-list.ts';
import { filmAt } from '../tools/film-clip/projector.ts';
import { filmClip, type ClipPlan } from '../tools/film-clip/film-clip.ts';
import type { SceneKind } from '../tools/film-clip/scenes.ts';
import { inTurn, sizeOf } from '../tools/sample-sizes.ts';
import { enteredBench } from './file/film-clips.ts';
import { describeStands, plansWith, positionOf } from './file/film-stand-clips.ts';

describe('a stretch in which nothing changes', () => {
  const middle = 120;
  const cases = inTurn<SceneKind>(['still-without-grain', 'black'], 2).flatMap((kind) =>
    plansWith(
      sizeOf('untold'),
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
    sizeOf('counted'),
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

describeStands(sizeOf('stands'));

describe('a claw that misses once', () => {
  const stands = [60, 100, 131];
  const cases = plansWith(1, [{ kind: 'moving', filmFrames: 600 }], 9, 340).map(
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
