import { describe, expect, test } from 'vitest';
import { nitratePounds, nitrateReasons } from '../../../src/core/reel/nitrate-suspicion.ts';

const sound = { base: 'acetate', smell: 'none', deposit: 'none' } as const;

describe('H-182', () => {
  test('750 lb of film equal 150 rolls of 1,000 ft, 5 lb a roll', () => {
    expect(nitratePounds(150 * 1000)).toBe(750);
    expect(nitratePounds(1000)).toBe(5);
  });

  test.each([1889, 1948, 1951])('35 mm film of %i may be nitrate', (year) => {
    expect(nitrateReasons({ ...sound, gauge: '35mm', year })).toHaveLength(1);
  });

  test('edge words print through, so that stated safety film does not clear the suspicion', () => {
    const [reason] = nitrateReasons({ ...sound, gauge: '35mm', year: 1948 });
    expect(reason?.reason).toContain('print through');
  });

  test('brown powder is a stage of decay, on any gauge', () => {
    expect(nitrateReasons({ ...sound, gauge: '16mm', deposit: 'brown-powder' })).toHaveLength(1);
  });
});
