import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { filmSpeedMillimetresPerSecond } from '../../../src/core/reel/film-length.ts';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import {
  findSoundSystem,
  framesMillimetres,
  framesSeconds,
  SOUND_SYSTEMS,
  soundLateFrames,
} from '../../../src/core/file/sound-separation.ts';
import { expectRelative } from '../relative.ts';

/**
 * Runs a film frame by frame through a gate and a sound head some frames further on. On the film the
 * sound of picture k lies beside picture k − separation. Tells how many frames after its picture a
 * sound is heard.
 */
function lateByRunningFilm(separation: number, pathFrames: number): number {
  const picture = 1000;
  let shownAt = Number.NaN;
  let heardAt = Number.NaN;
  for (let time = 0; time < 4000; time += 1) {
    const inGate = time;
    const besideHead = time - pathFrames;
    if (inGate === picture) shownAt = time;
    if (besideHead === picture - separation) heardAt = time;
  }
  return heardAt - shownAt;
}

describe('the sound of a film run through a projector', () => {
  test('is in step when the path from gate to head is as long as the separation', () => {
    for (const { framesAhead } of SOUND_SYSTEMS) {
      expect(lateByRunningFilm(framesAhead, framesAhead)).toBe(0);
      expect(soundLateFrames(framesAhead, 0, false)).toBe(0);
    }
  });

  test('is late by the frames that the lower loop is too long', () => {
    const system = fc.constantFrom(...SOUND_SYSTEMS);
    fc.assert(
      fc.property(system, fc.integer({ min: -15, max: 15 }), ({ framesAhead }, error) => {
        expect(soundLateFrames(framesAhead, error, false)).toBe(
          lateByRunningFilm(framesAhead, framesAhead + error),
        );
      }),
      { numRuns: 50 },
    );
  });

  test('is early by the whole separation when it is read in the gate', () => {
    for (const { framesAhead } of SOUND_SYSTEMS) {
      expect(soundLateFrames(framesAhead, 0, true)).toBe(lateByRunningFilm(framesAhead, 0));
      expect(soundLateFrames(framesAhead, 0, true)).toBe(-framesAhead);
    }
  });
});

describe('the sound systems', () => {
  test('are those of the gauges, each with its source', () => {
    const tracks = Object.values(GAUGES).flatMap(({ soundTracks }) => soundTracks);
    expect(SOUND_SYSTEMS.length).toBeGreaterThanOrEqual(5);
    expect(SOUND_SYSTEMS).toHaveLength(tracks.length);
    expect(new Set(SOUND_SYSTEMS.map(({ name }) => name)).size).toBe(SOUND_SYSTEMS.length);
    for (const { source } of SOUND_SYSTEMS) expect(source).not.toBe('');
  });

  test.each([
    ['16mm-optical', 198.1, 1.444, 1.083, 1.04],
    ['16mm-magnetic', 213.4, 1.556, 1.167, 1.12],
    ['8mm-type-r-magnetic', 213.4, 3.111, 2.333, 2.24],
    ['super-8-magnetic', 76.2, 1, 0.75, 0.72],
    ['super-8-optical', 93.1, 1.222, 0.917, 0.88],
    ['35mm-optical', 380, 1.111, 0.833, 0.8],
  ])('%s: %d mm, and times at 18, 24 and 25', (name, millimetres, at18, at24, at25) => {
    const { framesAhead, stepMillimetres } = findSoundSystem(name);
    expect(framesMillimetres(framesAhead, stepMillimetres)).toBeCloseTo(millimetres, 0);
    expect(framesSeconds(framesAhead, 18)).toBeCloseTo(at18, 3);
    expect(framesSeconds(framesAhead, 24)).toBeCloseTo(at24, 3);
    expect(framesSeconds(framesAhead, 25)).toBeCloseTo(at25, 3);
  });

  test('are named when one is asked for that does not exist', () => {
    expect(() => findSoundSystem('9.5mm-optical')).toThrow(/16mm-optical/u);
  });
});

describe('lengths, times and tones', () => {
  const frames = fc.integer({ min: -500, max: 500 });
  const rate = fc.double({ min: 1, max: 100, noNaN: true });
  const system = fc.constantFrom(...SOUND_SYSTEMS);

  test('agree: the film takes its length at its speed', () => {
    fc.assert(
      fc.property(frames, rate, system, (count, filmFps, { gauge, stepMillimetres }) => {
        const seconds = framesSeconds(count, filmFps);
        const speed = filmSpeedMillimetresPerSecond(filmFps, gauge, 'long-pitch');
        expectRelative(
          Math.abs(seconds) * speed,
          Math.abs(framesMillimetres(count, stepMillimetres)),
        );
      }),
    );
  });

  test('refuse a film that stands still and a loop of a metre', () => {
    expect(() => framesSeconds(26, 0)).toThrow(/filmFps/u);
    expect(() => soundLateFrames(26, 101, false)).toThrow(/loopErrorFrames/u);
  });
});
