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
import { drawnValue } from '../tools/drawn-value.ts';
import { PLAIN_SOUND, projectorSound, type ProjectorSound } from '../tools/projector-sound.ts';

// The sums that the reading of a sound is made of, one after the other, kept to nine digits, for sounds
// of every kind, each held against the speed that was drawn (npm run approve writes the file again).

const shown = { significantDigits: 9, longest: 14 };
const line = (name: string, value: unknown): string => `${name}: ${drawnValue(value, shown)}`;

interface DrawnSound {
  readonly title: string;
  readonly range?: { readonly least: number; readonly most: number };
  readonly plan: Partial<ProjectorSound>;
  /** Says the film rate among its answers; none where the sound tells nothing. */
  readonly isRead: boolean;
}

const SOUNDS: readonly DrawnSound[] = [
  { title: 'a claw at 24', plan: { filmFps: 24, sampleRate: 16_000 }, isRead: true },
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
  it.each(SOUNDS)('of $title', ({ title, plan: changes, range, isRead }) => {
    const plan = { ...PLAIN_SOUND, sampleRate: 8000, seconds: 4.2, ...changes };
    const { samples, meanFps } = projectorSound(plan, 9);
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
