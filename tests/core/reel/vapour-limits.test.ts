import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  explosiveSharePercent,
  exposureLimit,
  heavierThanAir,
  milligramsPerCubicMetre,
  partsPerMillion,
  steadyMilligramsPerCubicMetre,
  VAPOURS,
  type Vapour,
  type VapourName,
} from '../../../src/core/reel/vapour-limits.ts';
import { expectRelative } from '../relative.ts';

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

  test('takes the strictest limit by itself, whoever publishes it', () => {
    expect(exposureLimit('isopropanol', 'strictest').dayPpm).toBe(200);
    expect(exposureLimit('acetic-acid', 'strictest')).toMatchObject({ dayPpm: 10, shortPpm: 15 });
    for (const name of Object.keys(VAPOURS) as VapourName[]) {
      const { limits }: Vapour = VAPOURS[name];
      const strictest = exposureLimit(name, 'strictest');
      expect(Object.keys(limits).length).toBeGreaterThan(1);
      for (const { dayPpm, shortPpm = Infinity } of Object.values(limits)) {
        expect(strictest.dayPpm).toBeLessThanOrEqual(dayPpm);
        expect(shortPpm).toBeGreaterThan(dayPpm);
      }
    }
  });

  test('names a publisher and a year for every limit', () => {
    const all = Object.values(VAPOURS).flatMap(({ limits }) => Object.values(limits));
    expect(all).toHaveLength(5);
    for (const { publisher, year } of all) {
      expect(publisher).toMatch(/MAK|OSHA|NIOSH/u);
      expect(year).toMatch(/\d{4}|undated/u);
    }
  });

  test('refuses a publisher whose limit was not read', () => {
    expect(() => exposureLimit('acetic-acid', 'mak')).toThrow(/limit/u);
  });

  test('is a hundredth of the explosive limit at 200 ppm of alcohol, counted in litres', () => {
    // A room of 100 m³ holds 100 000 L of air; 2 % of that explodes, 20 L are there.
    const roomLitres = 100_000;
    const vapourLitres = (200 / 1e6) * roomLitres;
    const explosiveLitres = 0.02 * roomLitres;
    expectRelative(explosiveSharePercent(200, 2), (100 * vapourLitres) / explosiveLitres, 1e-12);
  });

  test('sinks when its molecules weigh more than nitrogen and oxygen', () => {
    const air = 0.781 * 28.01 + 0.209 * 32 + 0.0093 * 39.95;
    expectRelative(heavierThanAir(60.1), 60.1 / air, 2e-3);
    expect(heavierThanAir(16)).toBeLessThan(1);
  });

  test('is refused in a room without air', () => {
    expect(() => steadyMilligramsPerCubicMetre(1, 0.79, 0, 1)).toThrow(/roomCubicMetres/u);
    expect(() => steadyMilligramsPerCubicMetre(1, 0.79, 40, 0)).toThrow(/airChangesPerHour/u);
    expect(() => milligramsPerCubicMetre(-1, 60)).toThrow(/partsPerMillion/u);
  });
});
