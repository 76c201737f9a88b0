import { describe, expect, test } from 'vitest';
import {
  doseOfRunLuxHours,
  frameHeating,
  irradianceWattsPerMm2,
  lumensOnArea,
  neededLux,
  secondsToHundredKelvin,
  standingKelvin,
} from '../../../src/core/gate/film-light.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/gate/film-light/worksheet.ts';
import { expectRelative } from '../relative.ts';

const run = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries)).outcome!;

describe('the light that the camera needs', () => {
  // Light traced by hand: a lens of diameter D at distance u takes from each point of an even white
  // surface the share sin² of its half angle, and spreads it over m² times the area.
  test('is what a lens of that width, at that distance, brings to the sensor', () => {
    for (const m of [0.8, 1.4, 4.4]) {
      const focal = 50;
      const fNumber = 5.6;
      const distance = focal * (1 + 1 / m);
      const tangent = focal / fNumber / 2 / distance;
      const gathered = tangent ** 2 * 0.9; // paraxial, through glass that passes 0.9
      const sensorPerGate = gathered / m ** 2;
      const luxSeconds = 78 / 100;
      const expected = luxSeconds / (0.02 * 0.5) / sensorPerGate;
      const lux = neededLux({
        sensitivity: 100,
        exposureSeconds: 0.02,
        openFraction: 0.5,
        effectiveFNumber: fNumber * (1 + m),
      });
      expectRelative(lux, expected, 1e-9);
    }
  });

  test('is about 61,000 lx for 16 mm and 320,000 lx for Super 8, worked out by hand', () => {
    const at = (effective: number) =>
      neededLux({
        sensitivity: 100,
        exposureSeconds: 1 / 50,
        openFraction: 0.5,
        effectiveFNumber: effective,
      });
    expectRelative(at(13.3), 61_000, 0.02);
    expectRelative(at(30.4), 320_000, 0.01);
    expectRelative(lumensOnArea(320_000, 5.31 * 4.01), 6.8, 0.01);
    expectRelative(lumensOnArea(61_000, 9.65 * 7.21), 4.2, 0.02);
  });
});

describe('the constants of lamp and film', () => {
  /** CIE 1931 standard observer, y̅ from 380 nm in steps of 10 nm. */
  const OBSERVER = [
    ...[0, 0.0001, 0.0004, 0.0012, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.091, 0.139, 0.208, 0.323],
    ...[0.503, 0.71, 0.862, 0.954, 0.995, 0.995, 0.952, 0.87, 0.757, 0.631, 0.503, 0.381, 0.265],
    ...[0.175, 0.107, 0.061, 0.032, 0.017, 0.0082, 0.0041, 0.0021, 0.001, 0.0005, 0.0003, 0.0001],
  ];
  /** Planck's law: W/m² of a black body in each metre of wavelength. */
  const planck = (nanometres: number, kelvin: number): number => {
    const metres = nanometres * 1e-9;
    return 3.741_771_852e-16 / (metres ** 5 * Math.expm1(1.438_776_877e-2 / (metres * kelvin)));
  };
  /** Lumens in each watt that a black body radiates up to a wavelength. */
  function lumensPerWatt(kelvin: number, upToNanometres: number): number {
    const lumens = OBSERVER.reduce(
      (sum, seen, index) => sum + 683 * seen * planck(380 + 10 * index, kelvin) * 10e-9,
      0,
    );
    let watts = 0;
    for (let nanometres = 205; nanometres < upToNanometres; nanometres += 10)
      watts += planck(nanometres, kelvin) * 10e-9;
    return lumens / watts;
  }
  const coded = (source: Parameters<typeof irradianceWattsPerMm2>[1]): number =>
    1e-6 / irradianceWattsPerMm2(1, source);

  test('of a filament are what a black body at 3,200 K gives, infrared and all', () => {
    expectRelative(coded('filament'), lumensPerWatt(3200, 60_000), 0.02);
    // Lamps burn between 3,000 and 3,400 K: a third of a stop either way.
    expect(coded('filament')).toBeGreaterThan(lumensPerWatt(3000, 60_000));
    expect(coded('filament')).toBeLessThan(lumensPerWatt(3400, 60_000));
  });

  test('behind heat glass are those of the same light without what lies beyond 0.95 µm', () => {
    expectRelative(coded('filament-heat-glass'), lumensPerWatt(3200, 950), 0.06);
  });

  test('of a white LED lie in the printed range, at its end', () => {
    expect(coded('white-led')).toBeGreaterThanOrEqual(260);
    expect(coded('white-led')).toBeLessThanOrEqual(300.001);
  });

  test('of the film lie inside the tables of cellulose acetate', () => {
    const heatOfMetre = (density: number, heat: number): number => density * heat * 0.152e-3;
    const seconds = (density: number, heat: number): number =>
      (heatOfMetre(density, heat) * 100) / 100_000;
    expect(secondsToHundredKelvin(0.1)).toBeGreaterThan(seconds(1260, 1200));
    expect(secondsToHundredKelvin(0.1)).toBeLessThan(seconds(1340, 1900));
    // √(k ρ c) rules the rise at the surface.
    const surface = (conductivity: number, density: number, heat: number): number =>
      (2 * 100_000 * Math.sqrt(1 / 18 / Math.PI)) / Math.sqrt(conductivity * density * heat);
    const { surfaceKelvin } = frameHeating(0.1, 18);
    expect(surfaceKelvin).toBeLessThan(surface(0.16, 1260, 1200));
    expect(surfaceKelvin).toBeGreaterThan(surface(0.36, 1340, 1900));
    expectRelative(surfaceKelvin, surface(0.22, 1290, 1500), 0.06);
  });
});

describe('the heat of a frame', () => {
  /** A film cut into thin layers and warmed step by step, with nothing lost. */
  function warmedBySteps(wattsPerMm2: number, seconds: number, thickness: number) {
    const layers = 76;
    const width = thickness / layers;
    const heat = 1300 * 1500;
    const spread = 0.2 / heat;
    const step = (0.2 * width ** 2) / spread;
    const steps = Math.ceil(seconds / step);
    const dt = seconds / steps;
    const warm = Array.from({ length: layers }, () => 0);
    for (let count = 0; count < steps; count += 1) {
      const before = [...warm];
      for (let layer = 0; layer < layers; layer += 1) {
        const left = layer === 0 ? before[0]! : before[layer - 1]!;
        const right = layer === layers - 1 ? before[layer]! : before[layer + 1]!;
        const conducted = (spread * (left + right - 2 * before[layer]!)) / width ** 2;
        const taken = layer === 0 ? (wattsPerMm2 * 1e6) / (heat * width) : 0;
        warm[layer] = before[layer]! + dt * (conducted + taken);
      }
    }
    const mean = warm.reduce((sum, each) => sum + each, 0) / layers;
    return { mean, surface: warm[0]! };
  }

  test('lies between the two bounds of a film that is warmed layer by layer', () => {
    for (const filmFps of [18, 24]) {
      const { mean, surface } = warmedBySteps(0.25, 1 / filmFps, 0.152e-3);
      const { evenKelvin, surfaceKelvin } = frameHeating(0.25, filmFps);
      expectRelative(evenKelvin, mean, 1e-6);
      // The thick slab is no more than a film of the real thickness reaches at its surface.
      expect(surface).toBeGreaterThan(evenKelvin);
      expectRelative(surfaceKelvin, surface, 0.12);
      // In a slab of many times the thickness the surface warms exactly as said.
      expectRelative(surfaceKelvin, warmedBySteps(0.25, 1 / filmFps, 0.5e-3).surface, 0.08);
    }
  });

  test.each([
    [0.25, 47, 106],
    [0.15, 28, 64],
    [0.05, 9.4, 21],
    [0.001, 0.2, 0.4],
  ])('of %d W/mm² at 18 frames/s is %d to %d K', (watts, even, surface) => {
    const { evenKelvin, surfaceKelvin } = frameHeating(watts, 18);
    expectRelative(evenKelvin, even, 0.07);
    expectRelative(surfaceKelvin, surface, 0.07);
  });

  test('of film that stands: 0.59 s at 0.05 and 0.20 s at 0.15 W/mm²; a cool light ends at 50 K', () => {
    expectRelative(secondsToHundredKelvin(0.05), 0.59, 0.01);
    expectRelative(secondsToHundredKelvin(0.15), 0.2, 0.02);
    expectRelative(standingKelvin(0.001), 50);
  });

  test('goes with the light by the kind of lamp', () => {
    expectRelative(irradianceWattsPerMm2(5e6, 'filament'), 0.19, 0.03);
    expectRelative(irradianceWattsPerMm2(5e6, 'filament-heat-glass'), 0.05, 0.01);
    expectRelative(irradianceWattsPerMm2(320_000, 'white-led'), 0.0011, 0.04);
    expectRelative(doseOfRunLuxHours(5e6, 0.5, 18), 39, 0.02);
    expectRelative(doseOfRunLuxHours(320_000, 0.5, 18), 2.5, 0.02);
  });
});

describe('the sheet on the light', () => {
  test('takes light that was not measured at its brightest, and says so', () => {
    const { verdict, answers } = run({});
    expect(verdict.level).not.toBe('good');
    expect(verdict.sentence).toMatch(/not measured/u);
    expect(answers['standing']!.level).toBe('stop');
  });

  test('is content with the light that it asks for, cool or hot', () => {
    for (const gauge of ['8mm-type-r', 'super-8', '9.5mm', '16mm']) {
      for (const sensorWidthMillimetres of ['6', '13.2', '23.5']) {
        const first = run({ gauge, sensorWidthMillimetres, source: 'white-led' });
        const lampLux = String(first.answers['neededLux']!.value);
        const second = run({ gauge, sensorWidthMillimetres, source: 'white-led', lampLux });
        expect(second.verdict.level, `${gauge} ${sensorWidthMillimetres}`).toBe('good');
      }
    }
  });

  test('stops a light that can mark moving film', () => {
    // 0.2 W/mm² on average at half open are 0.4 W/mm², 10.8 million lux of a bare filament.
    expect(run({ lampLux: '11000000', openPercent: '50' }).verdict.level).toBe('stop');
    expect(run({ lampLux: '10000000', openPercent: '50' }).verdict.level).toBe('care');
    expect(run({ lampLux: '11000000', source: 'white-led' }).verdict.level).toBe('care');
    expect(run({ lampLux: '1000', source: 'white-led' }).verdict.sentence).toMatch(
      /open the lens/u,
    );
  });
});
