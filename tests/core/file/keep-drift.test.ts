import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  isSureFilmFrame,
  keepTrust,
  perfectListFails,
  provenWanderPercent,
  tieErrorFrames,
  wanderBornePercent,
  type KeepBench,
} from '../../../src/core/file/keep-drift.ts';
import { makeKeepReel, type KeepTie } from '../../../src/core/file/keep-ties.ts';

const bench: KeepBench = {
  cameraFps: 50,
  exposureSeconds: 1 / 54,
  readoutSeconds: 0,
  pulldownDarkFraction: 1 / 6,
  longestDarkFraction: 1 / 6,
};

const reelOf = (ties: readonly KeepTie[], filmFrames = 3600) =>
  makeKeepReel(ties, new Fraction(18), new Fraction(50), filmFrames);

const first = { filmFrame: 0, cameraFrame: 126 };
const last = { filmFrame: 3599, cameraFrame: 10_123.5 };

describe('error of a tie read by eye', () => {
  test('a count of clean camera frames hems the middle in', () => {
    // A window of exactly 3 camera frames shows 3 clean ones wherever it lies, so ±½ is left.
    expect(tieErrorFrames(3, 3, 126)).toBe(0.5);
    // In a window of 2.2, three are clean only when it lies within 0.1 of their middle.
    expect(tieErrorFrames(2.2, 2.2, 126)).toBeCloseTo(0.1, 12);
    // Two are clean nearly always.
    expect(tieErrorFrames(2.2, 2.2, 126.5)).toBeCloseTo(0.4, 12);
    expect(tieErrorFrames(2.2, 2.4, 126)).toBeCloseTo(0.2, 12);
  });

  test('a tie in tenths, and one that cannot be, bound nothing', () => {
    expect(tieErrorFrames(2.2, 2.2, 126.3)).toBe(0.5);
    expect(tieErrorFrames(0.4, 0.5, 126.5)).toBe(0.5);
  });
});

describe('trust in a keep list', () => {
  test('without wander a list tied at both ends is sure all through', () => {
    const trust = keepTrust(reelOf([first, last]), bench, {
      rateErrorPercent: 0,
      wanderPercent: 0,
    });
    expect(trust.sureFilmFrames).toBe(3600);
    expect(trust.runs).toEqual([{ firstFilmFrame: 0, filmFrames: 3600, isSure: true }]);
  });

  test('with wander it is sure near the ties only, and less so the more it wanders', () => {
    const reel = reelOf([first, last]);
    const sureAt = (wanderPercent: number) =>
      keepTrust(reel, bench, { rateErrorPercent: 0, wanderPercent });
    const some = sureAt(0.1);
    expect(some.runs[0]?.isSure).toBe(true);
    expect(some.runs.at(-1)?.isSure).toBe(true);
    expect(isSureFilmFrame(some, 0)).toBe(true);
    expect(isSureFilmFrame(some, 1800)).toBe(false);
    expect(isSureFilmFrame(some, 3599)).toBe(true);
    expect(some.sureFilmFrames).toBeLessThan(600);
    expect(sureAt(0.2).sureFilmFrames).toBeLessThan(some.sureFilmFrames);
  });

  test('the farthest a film frame can lie from its place is half way between two ties', () => {
    const reel = reelOf([first, last]);
    const { worstErrorFrames, tieErrorFrames: errors } = keepTrust(reel, bench, {
      rateErrorPercent: 0,
      wanderPercent: 0.1,
    });
    // w × G ÷ 2 film frames, 2.777 camera frames each, and the error of the ties.
    const expected = ((0.001 * 3599) / 2) * (9997.5 / 3599) + Math.max(...errors);
    expect(Math.abs(worstErrorFrames - expected)).toBeLessThan(0.2);
  });

  test('after the last tie error of the rate and wander add up without end', () => {
    const trust = keepTrust(reelOf([first]), bench, { rateErrorPercent: 0.1, wanderPercent: 0.1 });
    expect(trust.runs[0]?.isSure).toBe(true);
    expect(isSureFilmFrame(trust, 3599)).toBe(false);
    expect(trust.worstErrorFrames / 2.778).toBeGreaterThan(7.1);
    expect(trust.worstErrorFrames / 2.778).toBeLessThan(7.5);
  });

  test('nothing is sure where rows can stay dark', () => {
    const dark = { ...bench, exposureSeconds: 1 / 125 };
    const reel = reelOf([first, last]);
    const trust = keepTrust(reel, dark, { rateErrorPercent: 0, wanderPercent: 0 });
    expect(trust.sureFilmFrames).toBe(0);
    expect(wanderBornePercent(reel, dark, 0)).toBeUndefined();
    expect(perfectListFails(reel, dark)).toBe(true);
  });

  test('two ties prove no wander, a third may', () => {
    expect(provenWanderPercent(reelOf([first, last]))).toBe(0);
    const middle = { filmFrame: 1800, cameraFrame: 5132 };
    // 2.78111 and 2.77460 camera frames per film frame differ by 0.234 %, twice the wander.
    expect(provenWanderPercent(reelOf([first, middle, last]))).toBeCloseTo(0.117, 1);
  });
});
