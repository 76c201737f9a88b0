import { describe, expect, test } from 'vitest';
import { tiedSound } from '../../../src/core/file/sound-ties.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet as retiming } from '../../../src/worksheets/file/sound-retiming/worksheet.ts';
import { worksheet } from '../../../src/worksheets/file/sound-ties/worksheet.ts';

const run = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries)).outcome!;

/** A run frame by frame: time at which each film frame passes, with a jump after some frame. */
function soundTimes(runFps: number, frames: number, delay: number, jumpAt: number, jump: number) {
  const times: number[] = [];
  let now = delay;
  for (let frame = 0; frame < frames; frame += 1) {
    times.push(now);
    now += 1 / runFps + (frame === jumpAt ? jump : 0);
  }
  return times;
}

describe('three ties', () => {
  const seen = [288, 7224, 14_112];
  const NAMES = ['head', 'middle', 'tail'] as const;
  const tie = (times: readonly number[], frame: number, at: number) => ({
    name: NAMES[at]!,
    pictureSeconds: frame / 24,
    soundSeconds: times[frame]!,
  });

  test('find the rate of a run that is counted frame by frame', () => {
    for (const runFps of [50 / 3, 18, 24.9]) {
      const times = soundTimes(runFps, 14_323, 4.2, -1, 0);
      const ties = seen.map((frame, at) => tie(times, frame, at));
      const tied = tiedSound(ties.toReversed(), 24);
      expect(tied.takenFps).toBeCloseTo(runFps, 6);
      expect(tied.middleOffFrames).toBeCloseTo(0, 4);
      expect(tied.startSeconds).toBeCloseTo(4.2, 6);
    }
  });

  test('see a jump at a splice between the outer two', () => {
    const times = soundTimes(18, 14_323, 0, 3000, 0.5);
    const ties = seen.map((frame, at) => tie(times, frame, at));
    // Half a second more of sound before the middle: it is heard late, by less than nine frames.
    const { middleOffFrames } = tiedSound(ties, 24);
    expect(middleOffFrames).toBeGreaterThan(2);
    expect(middleOffFrames).toBeLessThan(9);
  });

  test('lead to a retiming that brings the tail back to its picture', () => {
    const { answers, verdict } = run({});
    expect(verdict.level).toBe('good');
    const takenFps = String(answers['takenFps']!.value);
    const { outcome } = evaluate(
      retiming,
      fillEntries(retiming.inputs, { takenFps, nativeFps: '24', shownFps: '24' }),
    );
    const factor = outcome!.answers['correctedSampleRateHz']!.value! / 48_000;
    const tail = (846.74 - answers['startSeconds']!.value!) / factor;
    expect(Math.abs(tail - 588) * 24).toBeLessThan(1);
  });

  test('name the tie that does not come later', () => {
    const messages = (entries: Record<string, string>) =>
      evaluate(worksheet, fillEntries(worksheet.inputs, entries)).messages;
    expect(messages({ middlePictureSeconds: '12' })).toHaveProperty('middlePictureSeconds');
    expect(messages({ tailSoundSeconds: '400' })).toHaveProperty('tailSoundSeconds');
    expect(run({ middleSoundSeconds: '434' }).verdict.level).toBe('care');
  });
});
