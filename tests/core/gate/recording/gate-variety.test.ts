// Recordings of every kind of camera: rates, readout times, blades, edges, bits and a coder with little
// room, each drawn by the test's own generator.
import { describe, expect, test } from 'vitest';
import type { GateBench, GateReading } from '../../../../src/core/gate/recording/gate-reading.ts';
import { readEmptyGate } from '../../../../src/core/gate/recording/read-empty-gate.ts';
import { makeEqualShutter } from '../../../../src/core/gate/shutter.ts';
import { someOf } from '../../../tools/sample-sizes.ts';
import {
  CLUB_GATE,
  openingsOf,
  ripplesOverRun,
  simulateGate,
  type GateScene,
} from './simulated-gate.ts';

const NTSC_30 = 30_000 / 1001;
const NTSC_60 = 60_000 / 1001;

/** A club projector: 18 frames/s, three blades with hard edges, an exposure a little too long. */
const SCENE: GateScene = { ...CLUB_GATE, seed: 71, wipe: 0.004, trendShare: 0.001 };

const benchOf = (scene: GateScene): GateBench => ({
  nominalFilmFps: 18,
  flashesPerFrame: 3,
  shutter: makeEqualShutter(3, 0.5),
  exposureSeconds: scene.exposureSeconds,
  mainsHz: 50,
  rippleLimitPercent: 1,
});

function read(scene: GateScene): {
  readonly reading: GateReading;
  readonly trueFps: number;
  readonly truePercent: number;
} {
  const recording = simulateGate(scene);
  const reading = readEmptyGate(recording, benchOf(scene));
  if (reading.kind === 'refusal') throw new Error(JSON.stringify(reading));
  const truePercent = 100 * ripplesOverRun(scene, recording).together;
  return { reading, trueFps: recording.meanFilmFps, truePercent };
}

const SOFT = 0.05;
const UNEQUAL = { openings: openingsOf(3, 0.5, 0.05), exposureSeconds: 1 / 54.3 };

const CAMERAS: readonly (readonly [string, Partial<GateScene>])[] = [
  ['25, the longest readout', { cameraFps: 25, readoutSeconds: 0.02 }],
  ['25, 10 bits, soft edges', { cameraFps: 25, bits: 10, wipe: SOFT }],
  ['25, unequal blades', { cameraFps: 25, readoutSeconds: 0.016, ...UNEQUAL }],
  ['25, low bit rate', { cameraFps: 25, codeStep: 1 }],
  ['30000/1001, short readout', { cameraFps: NTSC_30, readoutSeconds: 0.004 }],
  ['30000/1001, 10 bits, low bit rate', { cameraFps: NTSC_30, bits: 10, codeStep: 4 }],
  ['30000/1001, unequal blades', { cameraFps: NTSC_30, readoutSeconds: 0.02, ...UNEQUAL }],
  ['50, soft edges', { cameraFps: 50, wipe: SOFT, readoutSeconds: 0.018 }],
  ['50, unequal blades, 10 bits', { cameraFps: 50, bits: 10, ...UNEQUAL }],
  ['50, low bit rate', { cameraFps: 50, codeStep: 1 }],
  ['60000/1001, 10 bits', { cameraFps: NTSC_60, bits: 10, exposureSeconds: 1 / 80 }],
  ['60000/1001, unequal blades', { cameraFps: NTSC_60, readoutSeconds: 0.015, ...UNEQUAL }],
  [
    '60000/1001, low bit rate',
    { cameraFps: NTSC_60, readoutSeconds: 0.008, exposureSeconds: 1 / 80, codeStep: 1 },
  ],
];

describe('recordings of all kinds of camera', () => {
  test.each(someOf(CAMERAS, 'cameras'))('%s', (_, differs) => {
    const scene = { ...SCENE, ...differs };
    const { reading, trueFps, truePercent } = read(scene);
    const off = Math.abs(reading.filmRate!.filmFps - trueFps);
    expect(off / trueFps).toBeLessThan(3e-4);
    expect(off).toBeLessThan(reading.filmRate!.errorFps);
    const isUnequal = scene.openings === UNEQUAL.openings;
    expect(reading.causes[0]?.cause).toBe(isUnequal ? 'unequal' : 'shutter');
    const isHeldBack = scene.codeStep !== undefined;
    const allowed = Math.max((isHeldBack ? 0.08 : 0.04) * truePercent, isHeldBack ? 1 : 0.3);
    expect(Math.abs(reading.ripple.percent - truePercent)).toBeLessThan(allowed);
    const late = Math.abs(reading.readoutSeconds! - scene.readoutSeconds);
    expect(late).toBeLessThan(reading.readoutErrorSeconds!);
    expect(reading.readoutErrorSeconds).toBeLessThan(0.0006);
  });

  test('a dark border that takes half of the outer bands does not move the readout time', () => {
    const recording = simulateGate({ ...SCENE, readoutSeconds: 0.016 });
    // The outer bands hold light in their inner half only: they are read a quarter of a band late and early.
    const { bands } = simulateGate({ ...SCENE, readoutSeconds: 0.016 * (1 - 0.5 / 11) });
    const mixed = recording.bands.map((light, at) =>
      at % 12 === 0 || at % 12 === 11 ? bands[at]! : light,
    );
    const reading = readEmptyGate({ ...recording, bands: mixed }, benchOf(SCENE));
    if (reading.kind === 'refusal') throw new Error(reading.reason);
    const late = Math.abs(reading.readoutSeconds! - 0.016);
    expect(late).toBeLessThan(reading.readoutErrorSeconds!);
    expect(late / 0.016).toBeLessThan(0.005);
  });
});

describe('recordings that are refused, at every camera rate', () => {
  const refusalOf = (scene: GateScene) => {
    const reading = readEmptyGate(simulateGate(scene), benchOf(scene));
    return reading.kind === 'refusal' ? reading : undefined;
  };
  const readoutSeconds = 0.011;

  describe.each(someOf([25, NTSC_30, 50, NTSC_60], 'refusedRates'))('at %f', (cameraFps) => {
    const plain = { ...SCENE, cameraFps, readoutSeconds };

    test('three seconds are too short, and the refusal says how long they are', () => {
      const refusal = refusalOf({ ...plain, seconds: 3 });
      expect(refusal?.reason).toBe('too-short');
      expect(refusal?.amount).toBeCloseTo(3, 0);
    });

    test('a gate brighter than the file can hold is clipped', () => {
      const refusal = refusalOf({ ...plain, level: 1.2 });
      expect(refusal?.reason).toBe('clipped');
      expect(refusal?.amount).toBeGreaterThan(0.01);
    });

    test('a gate with the lens cap on is black', () => {
      expect(refusalOf({ ...plain, level: 0.0005 })?.reason).toBe('black');
    });

    test('a finger is named with its time and its band', () => {
      const finger = {
        fromSeconds: 4.2,
        toSeconds: 6,
        fromHeight: 0.55,
        toHeight: 0.8,
        darkShare: 0.3,
      };
      const refusal = refusalOf({ ...plain, finger });
      expect(refusal?.reason).toBe('something-moves');
      expect(refusal?.seconds).toBeGreaterThan(3.6);
      expect(refusal?.seconds).toBeLessThan(6);
      expect(refusal?.band).toBeGreaterThanOrEqual(6);
      expect(refusal?.band).toBeLessThanOrEqual(9);
    });

    test('a camera that stretches its frames in dim light has no even times', () => {
      // Half-way through it exposes every second frame half as long again.
      const late = Math.floor(5 * cameraFps);
      const startSeconds = (frame: number): number =>
        (frame + Math.max(0, Math.floor((frame - late) / 2)) * 0.5) / cameraFps;
      const refusal = refusalOf({ ...plain, startSeconds });
      expect(refusal?.reason).toBe('irregular-times');
      expect(refusal?.seconds).toBeGreaterThan(4.5);
      expect(refusal?.seconds).toBeLessThan(6);
    });
  });

  test('a global shutter leaves two film rates, and the true one is among them', () => {
    const scene = {
      ...SCENE,
      filmFps: 16.6,
      readoutSeconds: 0,
      exposureSeconds: 1 / 60,
      wanderShare: 0,
    };
    const recording = simulateGate(scene);
    const reading = readEmptyGate(recording, { ...benchOf(scene), nominalFilmFps: 50 / 3 });
    expect(reading).toMatchObject({ kind: 'refusal', reason: 'two-answers' });
    if (reading.kind !== 'refusal') return;
    const rates = reading.answers.map(({ filmFps }) => filmFps ?? 0);
    expect(rates).toHaveLength(2);
    expect(
      Math.min(...rates.map((rate) => Math.abs(rate / recording.meanFilmFps - 1))),
    ).toBeLessThan(3e-4);
    expect(reading.answers.map(({ cause }) => cause)).toEqual(['shutter', 'shutter']);
  });

  test('a flicker that a global shutter slows to a swell may be an exposure that hunts: both are named', () => {
    const scene = {
      ...SCENE,
      filmFps: 16.69,
      readoutSeconds: 0,
      exposureSeconds: 1 / 30,
      wanderShare: 0.005,
    };
    const bench = { ...benchOf(scene), nominalFilmFps: 50 / 3 };
    const reading = readEmptyGate(simulateGate(scene), bench);
    expect(reading).toMatchObject({ kind: 'refusal', reason: 'two-answers' });
    if (reading.kind !== 'refusal') return;
    expect(reading.answers.map(({ cause }) => cause)).toContain('shutter');
    expect(reading.answers.find(({ cause }) => cause === 'shutter')?.filmFps).toBeCloseTo(16.67, 1);
  });

  test('a camera whose rows were measured before tells such a swell from one that hunts', () => {
    const hunting = {
      ...SCENE,
      filmFps: 16.9,
      exposureSeconds: 1 / 50.7,
      huntingShare: 0.1,
      readoutSeconds: 0.012,
    };
    const bench = {
      ...benchOf(hunting),
      nominalFilmFps: 50 / 3,
      readoutSeconds: 0.012,
    };
    const reading = readEmptyGate(simulateGate(hunting), bench);
    expect(reading.kind).toBe('reading');
    if (reading.kind === 'refusal') return;
    expect(reading.causes[0]?.cause).toBe('automatic-exposure');
  });
});

test('a motor that wanders through the matching rate gets no false film rate', () => {
  const scene = {
    ...SCENE,
    cameraFps: 50,
    exposureSeconds: 1 / 54.3,
    wanderShare: 0.016,
    readoutSeconds: 0.018,
  };
  const reading = readEmptyGate(simulateGate(scene), benchOf(scene));
  if (reading.kind === 'refusal') expect(reading.reason).toBe('unexplained');
  else expect(reading.filmRate).toBeUndefined();
});
