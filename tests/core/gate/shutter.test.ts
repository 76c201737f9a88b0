import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  closedSeconds,
  hasEqualBlades,
  longestDarkFraction,
  makeEqualShutter,
  makeProjectorShutter,
  makeShutter,
  pulldownDarkFraction,
  shutterOpenFraction,
} from '../../../src/core/gate/shutter.ts';

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

  test('a shutter told by its pulldown blade is the one measured arc by arc', () => {
    // Blades of 54, 54 and 72° and three openings of 60°.
    const told = makeProjectorShutter(3, 0.5, 72, 6);
    const degrees = told.sectors.flatMap((one) => [
      one.openFraction * 360,
      one.closedFraction * 360,
    ]);
    [60, 54, 60, 54, 60, 72].forEach((arc, index) => expect(degrees[index]).toBeCloseTo(arc, 9));
    expect(told.wipeFraction * 360).toBeCloseTo(6, 9);
    expect(hasEqualBlades(told)).toBe(false);
    expect(hasEqualBlades(makeProjectorShutter(3, 0.5))).toBe(true);
    expect(longestDarkFraction(told) * 360).toBeCloseTo(66, 9);
    // A narrow pulldown blade: the inner blades keep the gate dark for longest.
    const narrow = makeProjectorShutter(3, 0.5, 40);
    expect(longestDarkFraction(narrow) * 360).toBeCloseTo(70, 9);
    expect(pulldownDarkFraction(narrow) * 360).toBeCloseTo(40, 9);
  });

  test('the only blade is all the dark there is', () => {
    expect(makeProjectorShutter(1, 0.5, 180).sectors).toEqual(makeEqualShutter(1, 0.5).sectors);
    expect(() => makeProjectorShutter(1, 0.5, 90)).toThrow(/^pulldownBladeDegrees:.*180°/u);
  });

  test.each([
    ['pulldownBladeDegrees', () => makeProjectorShutter(3, 0.5, 179)],
    ['edgeWipeDegrees', () => makeProjectorShutter(3, 0.5, undefined, 61)],
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
