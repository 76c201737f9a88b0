import { describe, expect, it } from 'vitest';
import { bandMotionOfPictures } from '../../../src/core/file/band-motion.ts';
import { filmPosition, type FilmPosition } from '../../../src/core/file/film-position.ts';
import { measuredKeepList } from '../../../src/core/file/measured-keep-list.ts';
import {
  drawPlan,
  filmClip,
  type ClipPlan,
  type FilmClip,
} from '../../tools/film-clip/film-clip.ts';
import { enteredBench, isNearCameraRate } from './film-clips.ts';

/** Plans that can be read, with scenes of our own. */
export function plansWith(
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

export function positionOf(clip: FilmClip): FilmPosition {
  const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
  const position = filmPosition(motion, enteredBench(clip.plan));
  if (position.kind === 'refused') throw new Error(position.reason);
  return position;
}

/**
 * First seeds of clips in which the film stands for half a second or more. The first were set down before
 * they were run; the later ones once more, after short exposures had been told from stands, and they found
 * nine of twelve; the latest were set down, with their bar, before they were run on stands that are followed through camera
 * frames which change a little.
 */
export const STAND_SEEDS = { first: 6100, later: 9300, latest: 15_200 };

/** Holds so many clips with a stand, and the same clips without one, to what must be marked. */
export function describeStands(count: number, from: number = STAND_SEEDS.first): void {
  describe(`film that stands, seeds from ${from} on`, () => {
    const cases = plansWith(count, [{ kind: 'moving', filmFrames: 400 }], 7, from).map(
      ([seed, plan]) => {
        const { filmFps } = plan.projector;
        const from = Math.round(2.5 * filmFps) + (seed % 7);
        // An exposure hardly longer than the dark of the widest blade tells long stands alone.
        const isShort = plan.camera.exposureSeconds * filmFps < 1.05 * plan.pulldown;
        const length = Math.ceil((isShort ? 2 : 0.5) * filmFps) + 1 + (seed % 5);
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
}
