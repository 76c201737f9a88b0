import { describe, expect, test } from 'vitest';
import { BAND_COUNT, type BandLight } from '../../../../src/core/gate/band-light.ts';
import type { GateBench, GateReading } from '../../../../src/core/gate/recording/gate-reading.ts';
import { readEmptyGate } from '../../../../src/core/gate/recording/read-empty-gate.ts';
import { makeEqualShutter } from '../../../../src/core/gate/shutter.ts';
import { evaluate, fillEntries } from '../../../../src/worksheets/machine/evaluate.ts';
import { worksheet as flashMatch } from '../../../../src/worksheets/gate/flash-match/worksheet.ts';
import {
  CLUB_GATE,
  openingsOf,
  simulateGate,
  trueRipples,
  type GateScene,
} from './simulated-gate.ts';

/** A club projector: 18 frames/s, three blades, a camera at 25, an exposure a little too long. */
const PLAIN: GateScene = { ...CLUB_GATE };

const BENCH: GateBench = {
  nominalFilmFps: 18,
  flashesPerFrame: 3,
  shutter: makeEqualShutter(3, 0.5),
  exposureSeconds: 1 / 50,
  mainsHz: 50,
  rippleLimitPercent: 1,
};

function read(light: BandLight, bench: GateBench = BENCH): GateReading {
  const reading = readEmptyGate(light, bench);
  if (reading.kind === 'refusal') throw new Error(`refused: ${JSON.stringify(reading)}`);
  return reading;
}

const reasonOf = (light: BandLight, bench: GateBench = BENCH): string => {
  const reading = readEmptyGate(light, bench);
  return reading.kind === 'refusal' ? reading.reason : 'read';
};

/** The first frames of a recording. */
const cut = (light: BandLight, frames: number): BandLight => ({
  ...light,
  frameSeconds: light.frameSeconds.slice(0, frames),
  bands: light.bands.slice(0, frames * BAND_COUNT),
});

describe('the reading of an empty gate', () => {
  const recording = simulateGate(PLAIN);
  const reading = read(recording);

  test('rate, readout, beat, bands and ripple of a plain mismatch', () => {
    const { filmRate } = reading;
    expect(Math.abs(filmRate!.filmFps / recording.meanFilmFps - 1)).toBeLessThan(1e-4);
    expect(Math.abs(filmRate!.filmFps - recording.meanFilmFps)).toBeLessThan(filmRate!.errorFps);
    expect(filmRate!.errorFps / filmRate!.filmFps).toBeLessThan(3e-4);
    expect(reading.readoutSeconds).toBeCloseTo(0.012, 4);
    expect(reading.beatHz).toBeCloseTo(3 * recording.meanFilmFps - 50, 1);
    expect(reading.bandsDownPicture).toBeCloseTo(54.3 * 0.012, 2);
    const truth = trueRipples(PLAIN, recording.gains);
    expect(Math.abs(reading.ripple.percent - 100 * truth.together)).toBeLessThan(
      4 * truth.together,
    );
    expect(reading.ripple.isAtLeast).toBe(false);
    expect(reading.causes[0]?.cause).toBe('shutter');
    expect(reading.causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(reading.isEven).toBe(false);
  });

  test('the speed over time follows a motor that wanders', () => {
    const wandering = simulateGate({ ...PLAIN, wanderShare: 0.01, seed: 9 });
    const { speed } = read(wandering);
    expect(speed.length).toBeGreaterThan(30);
    for (const { seconds, filmFps } of speed.slice(2, -2)) {
      expect(Math.abs(filmFps / wandering.filmFpsAt(seconds) - 1)).toBeLessThan(0.004);
    }
  });

  test('what it advises passes the flash match sheet at the measured rate', () => {
    const { advice, filmRate, cameraFps, readoutSeconds } = reading;
    expect(advice.setting?.kind).toMatch(/works|needs-readout/u);
    const set = advice.setting as Extract<typeof advice.setting, { readonly setting: object }>;
    const entries = fillEntries(flashMatch.inputs, {
      filmFps: String(set.setting.filmFps),
      flashesPerFrame: '3',
      openPercent: '50',
      cameraFps: String(set.setting.cameraFps),
      exposureSeconds: `1/${Number((1 / set.setting.exposureSeconds).toPrecision(4))}`,
      readoutSeconds: `${1000 * Math.min(readoutSeconds!, set.kind === 'needs-readout' ? set.readoutSeconds : 1)} ms`,
      rippleLimitPercent: '1',
    });
    const { outcome, messages } = evaluate(flashMatch, entries);
    expect(messages).toEqual({});
    expect(outcome?.answers['ripplePercent']?.value).toBeLessThanOrEqual(1);
    expect(outcome?.verdict.level).toBe('good');
    expect(cameraFps).toBeCloseTo(25, 6);
    expect(filmRate!.filmFps).toBeCloseTo(set.setting.filmFps, 0);
    expect(advice.matchingFilmFps).toBeCloseTo(50 / 3, 6);
  });

  test('unequal blades are named, and no setting for blades alike is advised against them', () => {
    const scene = {
      ...PLAIN,
      cameraFps: 50,
      openings: openingsOf(3, 0.5, 0.05),
      exposureSeconds: 1 / (3 * PLAIN.filmFps),
    };
    const unequal = read(simulateGate(scene), { ...BENCH, exposureSeconds: 1 / 54.3 });
    expect(unequal.causes[0]?.cause).toBe('unequal');
    expect(unequal.advice.setting).toBeUndefined();
    // One film frame of 55 ms does not fit into a camera frame of 20 ms.
    expect(unequal.advice.wholeFilmFrameSeconds).toBeUndefined();
  });

  test('a matched, steady gate is said to be even, with what would have been found', () => {
    const even = read(simulateGate({ ...PLAIN, exposureSeconds: 1 / (3 * PLAIN.filmFps) }), {
      ...BENCH,
      exposureSeconds: 1 / 54.3,
    });
    expect(even.isEven).toBe(true);
    expect(even.quietPercent).toBeLessThan(0.5);
    expect(even.ripple.percent).toBeLessThan(0.6);
  });

  test('frames that are missing from the file change nothing', () => {
    const kept = [...recording.frameSeconds.keys()].filter((frame) => frame % 17 !== 5);
    const gappy: BandLight = {
      clippedShare: 0,
      frameSeconds: Float64Array.from(kept, (frame) => recording.frameSeconds[frame]! + 1.4),
      bands: Float64Array.from(
        kept.flatMap((frame) => [
          ...recording.bands.slice(frame * BAND_COUNT, (frame + 1) * BAND_COUNT),
        ]),
      ),
    };
    const other = read(gappy);
    expect(other.missingFrames).toBeGreaterThan(10);
    expect(other.filmRate!.filmFps / recording.meanFilmFps).toBeCloseTo(1, 3);
  });

  test('a picture that the camera flipped is read when the bench says so', () => {
    const bands = recording.bands.map(
      (_, at) => recording.bands[at - (at % BAND_COUNT) + BAND_COUNT - 1 - (at % BAND_COUNT)]!,
    );
    const flipped = read({ ...recording, bands }, { ...BENCH, isReadUpwards: true });
    expect(flipped.readoutSeconds).toBeCloseTo(0.012, 4);
  });

  test('an unknown tone curve leaves the rate alone and the ripple within a fifth', () => {
    const bent = read(simulateGate({ ...PLAIN, toneExponent: 1.9, readExponent: 2.2 }));
    expect(Math.abs(bent.filmRate!.filmFps / recording.meanFilmFps - 1)).toBeLessThan(1e-4);
    expect(Math.abs(bent.ripple.percent / reading.ripple.percent - 1)).toBeLessThan(0.2);
  });
});

describe('recordings that are not read', () => {
  const recording = simulateGate(PLAIN);

  test('too short, clipped, black, or with times that are no clock', () => {
    expect(reasonOf(cut(recording, 70))).toBe('too-short');
    expect(reasonOf({ ...recording, clippedShare: 0.02 })).toBe('clipped');
    expect(reasonOf({ ...recording, bands: recording.bands.map(() => 0.001) })).toBe('black');
    const frameSeconds = recording.frameSeconds.map((time, frame) =>
      frame > 100 ? time + 0.011 * Math.sin(3 * frame) : time,
    );
    expect(reasonOf({ ...recording, frameSeconds })).toBe('irregular-times');
  });

  test('empty and hopeless recordings are refused, not thrown', () => {
    const empty: BandLight = {
      frameSeconds: new Float64Array(0),
      bands: new Float64Array(0),
      clippedShare: 0,
    };
    expect(reasonOf(empty)).toBe('too-short');
    expect(reasonOf({ ...recording, bands: recording.bands.map(() => NaN) })).not.toBe('read');
  });

  test('a finger in the gate is refused with its time and band', () => {
    const bands = recording.bands.map((value, at) => {
      const [frame, band] = [Math.floor(at / BAND_COUNT), at % BAND_COUNT];
      return frame >= 120 && frame < 170 && band >= 7 && band <= 9 ? value * 0.8 : value;
    });
    const refusal = readEmptyGate({ ...recording, bands }, BENCH);
    expect(refusal).toMatchObject({ kind: 'refusal', reason: 'something-moves' });
    if (refusal.kind !== 'refusal') return;
    expect(refusal.seconds).toBeGreaterThan(3.9);
    expect(refusal.seconds).toBeLessThan(7);
    expect([7, 8, 9]).toContain(refusal.band);
  });

  test('a global shutter leaves two film rates, and both are named', () => {
    const scene = { ...PLAIN, filmFps: 16.6, readoutSeconds: 0, exposureSeconds: 1 / 60 };
    const refusal = readEmptyGate(simulateGate(scene), {
      ...BENCH,
      nominalFilmFps: 50 / 3,
      exposureSeconds: 1 / 60,
    });
    expect(refusal).toMatchObject({ kind: 'refusal', reason: 'two-answers' });
    if (refusal.kind !== 'refusal') return;
    const rates = refusal.answers.map(({ filmFps }) => filmFps ?? 0).sort((a, b) => a - b);
    expect(rates[0]).toBeCloseTo(16.6, 1);
    expect(rates[1]).toBeCloseTo(100 / 3 - 16.6, 1);
  });
});
