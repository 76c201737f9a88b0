import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  milligramsPerCubicMetre,
  partsPerMillion,
  steadyMilligramsPerCubicMetre,
  VAPOUR_LIMITS,
} from '../../src/core/vapour-limits.ts';
import { expectRelative } from './relative.ts';

/** Lets a liquid dry off in a room whose air is renewed, in steps of a thousandth of an hour. */
function afterHours(
  hours: number,
  milligramsPerHour: number,
  roomCubicMetres: number,
  airChangesPerHour: number,
): number {
  const step = 1 / 1000;
  let milligrams = 0;
  for (let time = 0; time < hours; time += step) {
    milligrams += milligramsPerHour * step;
    milligrams -= milligrams * airChangesPerHour * step;
  }
  return milligrams / roomCubicMetres;
}

describe('vapour in a room', () => {
  test('settles at the value given', () => {
    for (const [millilitres, density, room, changes] of [
      [10, 0.79, 40, 0.5],
      [3, 0.79, 25, 2],
      [50, 1.05, 60, 4],
    ] as const) {
      const settled = afterHours(30, millilitres * density * 1000, room, changes);
      expectRelative(
        steadyMilligramsPerCubicMetre(millilitres, density, room, changes),
        settled,
        0.01,
      );
    }
  });

  test('converts there and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 10_000, noNaN: true }),
        fc.double({ min: 10, max: 300, noNaN: true }),
        (ppm, molarMass) => {
          expectRelative(
            partsPerMillion(milligramsPerCubicMetre(ppm, molarMass), molarMass),
            ppm,
            1e-9,
          );
        },
      ),
    );
  });

  test('weighs what the gas law says', () => {
    // p V = n R T: moles in a cubic metre at 25 °C and 101325 Pa.
    const molesPerCubicMetre = 101_325 / (8.314462618 * 298.15);
    const milligrams = (400e-6 * molesPerCubicMetre * 60.1 * 1000) / 1;
    expectRelative(milligramsPerCubicMetre(400, 60.1), milligrams, 1e-3);
  });

  test('has a short limit above the limit of the day', () => {
    const limits = Object.values(VAPOUR_LIMITS);
    expect(limits.length).toBe(2);
    for (const { dayPpm, shortPpm } of limits) expect(shortPpm).toBeGreaterThan(dayPpm);
  });

  test('is refused in a room without air', () => {
    expect(() => steadyMilligramsPerCubicMetre(1, 0.79, 0, 1)).toThrow(/roomCubicMetres/u);
    expect(() => steadyMilligramsPerCubicMetre(1, 0.79, 40, 0)).toThrow(/airChangesPerHour/u);
    expect(() => milligramsPerCubicMetre(-1, 60)).toThrow(/partsPerMillion/u);
  });
});
