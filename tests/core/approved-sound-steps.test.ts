import { describe, expect, it } from 'vitest';
import { readClawNoise } from '../../src/core/gate/recording/claw-noise.ts';
import {
  isHeardIn,
  rhythmLine,
  rhythmShifts,
  standsOut,
} from '../../src/core/gate/recording/rhythm-lines.ts';
import { rhythmPath } from '../../src/core/gate/recording/rhythm-path.ts';
import { rhythmRate } from '../../src/core/gate/recording/rhythm-rate.ts';
import { soundBursts } from '../../src/core/gate/recording/sound-bursts.ts';
import { expectApproved } from '../tools/approved-text.ts';
import { namedToNineDigits as line } from '../tools/drawn-value.ts';
import { shortSounds } from './short-recordings.ts';

// The sums that the reading of a sound is made of, one after the other, kept to nine digits, for sounds
// of every kind, each held against the speed that was drawn (npm run approve writes the file again).

function steps(samples: Float32Array, sampleRate: number, filmFps: number): readonly string[] {
  const bursts = soundBursts(samples, sampleRate);
  const { all, valuesPerSecond } = bursts;
  const rate = rhythmRate(all, valuesPerSecond, 0.9 * filmFps, 1.2 * filmFps);
  const { turns } = rhythmPath(all, valuesPerSecond, 1.003 * filmFps);
  const lines = [1, 2, 3, 5].map((multiple) => rhythmLine(all, turns, 4, multiple));
  return [
    line('bursts', bursts),
    line('rate', rate),
    line('turns', turns),
    line('lines', lines),
    line('stand out', lines.map(standsOut)),
    line(
      'heard in',
      [0, 1, 2, 3].map((piece) => isHeardIn(lines, piece)),
    ),
    line('shifts', rhythmShifts(lines, 1)),
    line('shifts within a third', rhythmShifts(lines.slice(2, 3), 1 / 3)),
  ];
}

describe('the sums of a reading of sound', () => {
  it.each(shortSounds)('of $title', ({ title, plan, samples, meanFps, range, isRead }) => {
    const reading = readClawNoise(samples, plan.sampleRate, range);
    expect(reading.kind).toBe(isRead ? 'read' : 'none');
    if (reading.kind === 'read') {
      const rates = [reading.filmFps, ...reading.alternatives];
      const off = Math.min(...rates.map((fps) => Math.abs(fps - meanFps)));
      expect(off).toBeLessThan(1.5 * reading.errorFps);
    }
    const lines = [
      `## ${title}`,
      ...steps(samples, plan.sampleRate, plan.filmFps),
      line('reading', reading),
    ];
    expectApproved(
      `tests/core/approved/sound-steps-${title.replaceAll(/\W+/gu, '-')}.txt`,
      `${lines.join('\n')}\n`,
    );
  });
});
