import { expect } from 'vitest';
import type { TrueFrame } from '../../tools/film-clip/camera.ts';
import { filmAt } from '../../tools/film-clip/projector.ts';
import { judge, type Judgement } from '../../tools/film-clip/judge.ts';
import { clipOf, isNearCameraRate, readClip, type WrongEntries } from './film-clips.ts';

/** Wrong entries under which every film frame must still be kept once. */
export const WRONG_ENTRIES: readonly WrongEntries[] = [
  { rate: 1.04 },
  { rate: 0.96 },
  { exposure: 1.25 },
  { exposure: 0.75 },
  { readout: 0 },
];

/**
 * Reads one clip and holds it to the figures; undefined where film and camera run at nearly one rate,
 * which has figures of its own.
 */
export function acceptClip(seed: number): Judgement | undefined {
  const read = clipOf(seed);
  const { plan, truth } = read.clip;
  const right = readClip(read);
  if (isNearCameraRate(plan)) {
    acceptNearCameraRate(seed, right, truth);
    return undefined;
  }
  if (typeof right === 'string') throw new Error(`seed ${seed} refused: ${right}`);
  const found = judge(right.list.frames, truth);
  expect(found, `seed ${seed}`).toMatchObject({ lost: 0, doubled: 0, unmarkedErrors: 0 });
  // The film never stands in these clips.
  expect(right.list.stands, `seed ${seed}`).toEqual([]);
  // The list leaves out no more than the film frames that both ends cut.
  expect(found.filmFrames).toBeGreaterThan(plan.projector.filmFps * plan.seconds * 0.98 - 3);
  const trueFps = (filmAt(plan.projector, plan.seconds) - plan.projector.start) / plan.seconds;
  expect(Math.abs(right.filmFps / trueFps - 1), `seed ${seed}`).toBeLessThan(0.001);

  const wrong = WRONG_ENTRIES[seed % WRONG_ENTRIES.length]!;
  const nevertheless = readClip(read, wrong);
  if (typeof nevertheless === 'string')
    throw new Error(`seed ${seed} with ${JSON.stringify(wrong)} refused: ${nevertheless}`);
  const { lost, doubled } = judge(nevertheless.list.frames, truth);
  expect({ lost, doubled }, `seed ${seed} with ${JSON.stringify(wrong)}`).toEqual({
    lost: 0,
    doubled: 0,
  });
  return found;
}

/**
 * With hardly more camera frames than film frames the camera may take two film frames half and half,
 * and nobody can say which of them such a frame stands for; but no frame may be called whole that is not, and
 * one in fifty is the most that may stand for its neighbour.
 */
function acceptNearCameraRate(
  seed: number,
  right: ReturnType<typeof readClip>,
  truth: readonly TrueFrame[],
): void {
  if (typeof right === 'string') {
    expect(['nothing-told', 'camera-too-slow'], `seed ${seed}`).toContain(right);
    return;
  }
  const { frames } = right.list;
  const { lost, doubled, filmFrames } = judge(frames, truth);
  expect(lost + doubled, `seed ${seed}`).toBeLessThanOrEqual(0.02 * filmFrames);
  for (const { cameraFrame, status } of frames)
    if (status === 'whole')
      expect(truth[cameraFrame]!.leastShare, `seed ${seed}`).toBeGreaterThan(0.97);
}

/** Holds the sums over several clips to the share of whole frames. */
export function acceptShares(found: readonly (Judgement | undefined)[], fewest: number): void {
  const read = found.filter((each) => each !== undefined);
  expect(read.length).toBeGreaterThanOrEqual(fewest);
  const possible = read.reduce((sum, each) => sum + each.possible, 0);
  const whole = read.reduce((sum, each) => sum + each.whole, 0);
  expect(possible).toBeGreaterThan(100 * read.length);
  expect(whole / possible).toBeGreaterThanOrEqual(0.995);
}
