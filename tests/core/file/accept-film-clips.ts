import { expect } from 'vitest';
import { filmAt } from '../../tools/film-clip/projector.ts';
import { judge, type Judgement } from '../../tools/film-clip/judge.ts';
import { clipOf, isRefusable, readClip, type WrongEntries } from './film-clips.ts';

/** Wrong entries under which every film frame must still be kept once. */
export const WRONG_ENTRIES: readonly WrongEntries[] = [
  { rate: 1.04 },
  { rate: 0.96 },
  { exposure: 1.25 },
  { exposure: 0.75 },
  { readout: 0 },
];

/**
 * Reads one clip and holds it to the figures; undefined where the bench is one that may be refused and
 * was.
 */
export function acceptClip(seed: number): Judgement | undefined {
  const read = clipOf(seed);
  const { plan, truth } = read.clip;
  const right = readClip(read);
  if (typeof right === 'string') {
    expect(isRefusable(plan), `seed ${seed} refused: ${right}`).toBe(true);
    return undefined;
  }
  const found = judge(right.list.frames, truth);
  expect(found, `seed ${seed}`).toMatchObject({ lost: 0, doubled: 0, unmarkedErrors: 0 });
  // What is not listed at the ends is said to be not told.
  const untold = right.list.stretches
    .filter(({ place }) => place !== 'between')
    .reduce((sum, { fromSeconds, toSeconds }) => sum + toSeconds - fromSeconds, 0);
  expect(found.filmFrames).toBeGreaterThan(plan.projector.filmFps * (plan.seconds - untold - 0.3));
  const trueFps = (filmAt(plan.projector, plan.seconds) - plan.projector.start) / plan.seconds;
  expect(Math.abs(right.filmFps / trueFps - 1), `seed ${seed}`).toBeLessThan(0.001);

  const wrong = WRONG_ENTRIES[seed % WRONG_ENTRIES.length]!;
  const nevertheless = readClip(read, wrong);
  if (typeof nevertheless === 'string') {
    // An exposure entered too short may look like one that no list can be made of.
    expect([nevertheless, wrong.exposure], `seed ${seed}`).toEqual(['exposure-too-short', 0.75]);
  } else {
    const { lost, doubled } = judge(nevertheless.list.frames, truth);
    expect({ lost, doubled }, `seed ${seed} with ${JSON.stringify(wrong)}`).toEqual({
      lost: 0,
      doubled: 0,
    });
  }
  return found;
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
