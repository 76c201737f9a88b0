import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../src/core/errors.ts';
import {
  closedSeconds,
  makeEqualShutter,
  makeShutter,
  pulldownDarkFraction,
  shutterOpenFraction,
} from '../../src/core/shutter.ts';

describe('shutter', () => {
  test('equal blades share the cycle evenly', () => {
    const shutter = makeEqualShutter(3, 0.45);
    expect(shutter.sectors).toHaveLength(3);
    expect(shutterOpenFraction(shutter)).toBeCloseTo(0.45, 12);
    expect(pulldownDarkFraction(shutter)).toBeCloseTo(0.55 / 3, 12);
  });

  test('the last blade is the pulldown blade, and a wipe eats into its dark', () => {
    const shutter = makeShutter(
      [
        { openFraction: 0.3, closedFraction: 0.1 },
        { openFraction: 0.35, closedFraction: 0.25 },
      ],
      0.05,
    );
    expect(pulldownDarkFraction(shutter)).toBeCloseTo(0.2, 12);
  });

  test('the closed time of half-open blades at 18 frames/s with three flashes is 1/108 s', () => {
    expect(closedSeconds(18, 3, 0.5)).toBeCloseTo(1 / 108, 12);
  });

  test.each([
    ['flashesPerFrame', () => makeEqualShutter(0, 0.5)],
    ['flashesPerFrame', () => makeEqualShutter(2.5, 0.5)],
    ['openFraction', () => makeEqualShutter(3, 1)],
    ['openFraction', () => makeEqualShutter(3, Number.NaN)],
    ['wipeFraction', () => makeEqualShutter(3, 0.5, 0.2)],
    ['wipeFraction', () => makeEqualShutter(3, 0.5, -0.01)],
    ['sectors', () => makeShutter([{ openFraction: 0.5, closedFraction: 0.4 }])],
    ['closedFraction', () => makeShutter([{ openFraction: 0.5, closedFraction: 0 }])],
    ['flashesPerFrame', () => makeShutter([])],
    ['filmFps', () => closedSeconds(0, 3, 0.5)],
  ])('refuses a wrong %s by name', (argument, make) => {
    expect(make).toThrow(OutOfRangeError);
    expect(make).toThrow(new RegExp(`^${argument}:`, 'u'));
  });
});
