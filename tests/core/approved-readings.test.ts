import { describe, expect, it } from 'vitest';
import { filmPosition } from '../../src/core/file/film-position.ts';
import { measuredKeepList } from '../../src/core/file/measured-keep-list.ts';
import { readClawNoise } from '../../src/core/gate/recording/claw-noise.ts';
import type { GateReading } from '../../src/core/gate/recording/gate-reading.ts';
import { readEmptyGate } from '../../src/core/gate/recording/read-empty-gate.ts';
import { soundBursts } from '../../src/core/gate/recording/sound-bursts.ts';
import { bandMotionOfPictures } from '../../src/core/file/band-motion.ts';
import { makeEqualShutter } from '../../src/core/gate/shutter.ts';
import { expectApproved } from '../tools/approved-text.ts';
import { drawnValue } from '../tools/drawn-value.ts';
import { inTurn } from '../tools/sample-sizes.ts';
import { PLAIN_SOUND, projectorSound } from '../tools/projector-sound.ts';
import { enteredBench } from './file/film-clips.ts';
import { trueRipples } from './gate/recording/simulated-gate.ts';
import { drawnClips, drawnGates } from './drawn-recordings.ts';

// Whether a reading is right is judged by the drawn truth, in the tests of the readings. Here a few of
// them are kept to eight digits, so that a change that moves them a little is seen and looked at
// (npm run approve writes the files again).

const shown = { significantDigits: 8, longest: 12 };
const linesOf = (value: object): readonly string[] =>
  Object.entries(value).map(([key, part]) => `${key}: ${drawnValue(part, shown)}`);

/** What was drawn must lie within what the reading states. */
function expectTrue(reading: GateReading, { scene, truth }: (typeof drawnGates)[number]): void {
  const { filmRate, readoutSeconds, readoutErrorSeconds, ripple, causes } = reading;
  const { together, ...alone } = trueRipples(scene, truth.gains);
  const largest = Math.max(...Object.values(alone));
  if (filmRate !== undefined) {
    expect(Math.abs(filmRate.filmFps - truth.meanFilmFps)).toBeLessThan(filmRate.errorFps);
    expect(Math.abs(100 * together - ripple.percent)).toBeLessThan(Math.max(4 * together, 0.3));
  }
  if (readoutSeconds !== undefined) {
    expect(Math.abs(readoutSeconds - scene.readoutSeconds)).toBeLessThan(readoutErrorSeconds!);
  }
  const slowCause = scene.huntingShare > 0 ? 'automatic-exposure' : 'drift';
  const named = Object.entries(alone).filter(([, share]) => share === largest);
  const causeOf = (part: string): string => (part === 'slow' ? slowCause : part);
  if (!reading.isEven) expect(named.map(([part]) => causeOf(part))).toContain(causes[0]?.cause);
  else expect(largest).toBeLessThan(0.006);
}

describe('readings of drawn recordings', () => {
  it.each(inTurn(drawnGates, 2))('of an empty gate: $title', (gate) => {
    const { title, light, bench, flashes, open } = gate;
    const reading = readEmptyGate(light, { ...bench, shutter: makeEqualShutter(flashes, open) });
    if (reading.kind === 'reading') expectTrue(reading, gate);
    const lines = [`## ${title}`, ...linesOf(reading)];
    expectApproved(
      `tests/core/approved/gate-${title.replaceAll(/\W+/gu, '-')}.txt`,
      `${lines.join('\n')}\n`,
    );
  });

  it.each(inTurn(drawnClips, 2))('of a film: $title', ({ title, clip }) => {
    const motion = bandMotionOfPictures(clip.pictures, clip.frameSeconds);
    const bench = enteredBench(clip.plan);
    const position = filmPosition(motion, bench);
    const list = position.kind === 'refused' ? {} : measuredKeepList(position, motion, bench);
    const lines = [`## ${title}`, ...linesOf(position), ...linesOf(list)];
    expectApproved(
      `tests/core/approved/film-${title.replaceAll(/\W+/gu, '-')}.txt`,
      `${lines.join('\n')}\n`,
    );
  });

  it.each([
    ['plain', { filmFps: 18 }],
    [
      'wandering with mains and a voice',
      { filmFps: 16.7, wander: 0.01, mainsLevel: 0.1, voiceLevel: 0.1 },
    ],
  ] as const)('of a sound: %s', (title, part) => {
    const plan = { ...PLAIN_SOUND, sampleRate: 16_000, seconds: 6, ...part };
    const { samples } = projectorSound(plan, 5);
    const lines = [
      `## ${title}`,
      ...linesOf(soundBursts(samples, plan.sampleRate)),
      ...linesOf(readClawNoise(samples, plan.sampleRate, { least: 15, most: 20 })),
    ];
    expectApproved(
      `tests/core/approved/sound-${title.replaceAll(/\W+/gu, '-')}.txt`,
      `${lines.join('\n')}\n`,
    );
  });
});
