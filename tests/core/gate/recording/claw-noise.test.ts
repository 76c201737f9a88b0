// The film rate from the noise of a projector, whose every click, gust and hum is made here.
import { describe, expect, it } from 'vitest';
import { readClawNoise } from '../../../../src/core/gate/recording/claw-noise.ts';
import { rhythmRate } from '../../../../src/core/gate/recording/rhythm-rate.ts';
import { inTurn } from '../../../tools/sample-sizes.ts';
import {
  PLAIN_SOUND,
  projectorSound,
  type ProjectorSound,
} from '../../../tools/projector-sound.ts';

const sound = (part: Partial<ProjectorSound>, seed = 5) => {
  const plan = { ...PLAIN_SOUND, sampleRate: 16_000, seconds: 10, ...part };
  return { plan, ...projectorSound(plan, seed) };
};

function read(part: Partial<ProjectorSound>, range?: { least: number; most: number }, seed = 5) {
  const { plan, samples, meanFps } = sound(part, seed);
  return { reading: readClawNoise(samples, plan.sampleRate, range), meanFps };
}

function expectRight({ reading, meanFps }: ReturnType<typeof read>) {
  if (reading.kind !== 'read') throw new Error(reading.reason);
  // The error is two spreads; no case of these may lie beyond three.
  expect(Math.abs(reading.filmFps - meanFps)).toBeLessThan(1.5 * reading.errorFps);
  expect(Math.abs(reading.filmFps / meanFps - 1)).toBeLessThan(0.001);
  expect(reading.errorFps / meanFps).toBeLessThan(0.003);
  return reading;
}

describe('the film rate from the noise of the claw', () => {
  it.each(inTurn([16_000, 44_100, 48_000, 96_000], 2))('is read at %d samples/s', (sampleRate) => {
    expectRight(read({ sampleRate, seconds: 6 }));
  });

  it.each<readonly [string, Partial<ProjectorSound>]>([
    ['16 frames/s', { filmFps: 16 }],
    ['16⅔ frames/s, whose third multiple is the mains', { filmFps: 50 / 3 }],
    ['24 frames/s', { filmFps: 24 }],
    ['a motor that wanders by 2 %', { wander: 0.02, seconds: 14 }],
    ['clicks that come early and late', { jitterSeconds: 0.0015 }],
    ['quiet clicks', { clickLevel: 0.03 }],
    ['mains louder than the clicks', { mainsLevel: 0.2, mainsHertz: 60.03 }],
    ['a motor that hums', { motorLevel: 0.1, motorHertz: 48.3 }],
    ['a voice over it', { voiceLevel: 0.2 }],
    ['music over it', { musicLevel: 0.15 }],
    ['a sound cut off at its limit', { gain: 20 }],
  ])('is read with %s', (_, part) => {
    const range = { least: 0.9 * (part.filmFps ?? 18), most: 1.1 * (part.filmFps ?? 18) };
    expectRight(read(part, range));
  });

  it('comes with the film rates of a slower film that clicks twice a film frame', () => {
    const reading = expectRight(read({ filmFps: 24 }));
    expect(reading.alternatives).toHaveLength(1);
    expect(reading.alternatives[0]! / reading.filmFps).toBeCloseTo(1 / 2, 3);
  });

  it('names both answers for a claw of two teeth', () => {
    const { reading } = read({ clicks: 2, filmFps: 15 });
    if (reading.kind !== 'read') throw new Error(reading.reason);
    const named = [reading.filmFps, ...reading.alternatives];
    for (const fps of [15, 30])
      expect(named.some((each) => Math.abs(each / fps - 1) < 0.002)).toBe(true);
  });

  it('names the others where only the wind of three blades is heard', () => {
    const reading = expectRight(read({ clickLevel: 0, blades: 3, windLevel: 0.05 }));
    expect(reading.alternatives.some((fps) => Math.abs(fps / 27 - 1) < 0.002)).toBe(true);
    expect(reading.isClawHeard).toBe(false);
  });

  it('does not take the wind for the claw, however wide the range that is expected', () => {
    const { reading } = read(
      { clickLevel: 0, blades: 3, windLevel: 0.05 },
      { least: 16, most: 60 },
    );
    if (reading.kind !== 'read') throw new Error(reading.reason);
    expect(reading.filmFps / 18).toBeCloseTo(1, 2);
    expect(reading.isClawHeard).toBe(false);
  });

  it('is one answer where the claw is heard beside the wind', () => {
    const reading = expectRight(read({ clickLevel: 0.08, blades: 3, windLevel: 0.05 }));
    expect(reading.alternatives).toEqual([]);
    expect(reading.isClawHeard).toBe(true);
  });

  it('takes its expectation for an answer only where the rhythm is', () => {
    const { reading } = read({ filmFps: 18 }, { least: 22, most: 26 });
    expect(reading.kind).toBe('none');
  });
});

describe('no second reading', () => {
  it.each([
    ['silent', new Float32Array(10 * 16_000)],
    ['silent', Float32Array.from({ length: 10 * 16_000 }, (_, at) => ((at % 2) - 0.5) * 3e-5)],
    ['too-short', new Float32Array(3 * 16_000)],
  ] as const)('is said to be %s', (reason, samples) => {
    expect(readClawNoise(samples, 16_000)).toEqual({ kind: 'none', reason });
  });

  it.each([
    ['hiss', { mainsLevel: 0, motorLevel: 0 }],
    ['mains', { mainsLevel: 0.3, mainsHertz: 49.97 }],
    ['mains of 60 Hz', { mainsLevel: 0.3, mainsHertz: 60.02 }],
    ['a voice', { voiceLevel: 0.4 }],
    ['music', { musicLevel: 0.4 }],
  ] as const)('is made of %s alone', (_, part) => {
    for (const seed of inTurn([11, 12, 13], 3))
      expect(read({ clickLevel: 0, ...part }, undefined, seed).reading).toEqual({
        kind: 'none',
        reason: 'no-rhythm',
      });
  });

  it('says that a sound without a rhythm was cut off', () => {
    const { reading } = read({ clickLevel: 0, hissLevel: 0.5, gain: 4 });
    expect(reading).toEqual({ kind: 'none', reason: 'clipped' });
  });
});

describe('autocorrelation', () => {
  // A Barker code of 13 (Barker 1953, from memory): its aperiodic autocorrelation is 13 at no delay and 0
  // or 1 elsewhere. Sent again every 25 values, the delay of 25 alone finds it like itself.
  const BARKER_13 = [1, 1, 1, 1, 1, -1, -1, 1, 1, -1, 1, -1, 1];

  it('finds the period of a known sequence sent again and again', () => {
    const row = Float64Array.from({ length: 25 * 40 }, (_, at) => BARKER_13[at % 25] ?? 0);
    const { hertz, likeness } = rhythmRate(row, 500, 17, 24);
    expect(hertz).toBeCloseTo(500 / 25, 0);
    // One to five periods later 39 to 35 of 40 codes meet themselves.
    expect(likeness).toBeGreaterThan(0.85);
  });

  it('of a cosine is the cosine', () => {
    const row = Float64Array.from({ length: 5000 }, (_, at) =>
      Math.cos((2 * Math.PI * 18 * at) / 500),
    );
    expect(rhythmRate(row, 500, 16, 20).hertz).toBeCloseTo(18, 1);
    // Half a period away it is most unlike itself.
    expect(rhythmRate(row, 500, 35.9, 36.1).likeness).toBeLessThan(0.3);
  });
});
