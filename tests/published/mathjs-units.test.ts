import { unit } from 'mathjs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  filmSpeedMillimetresPerSecond,
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../src/core/reel/film-length.ts';
import { woundLengthMillimetres } from '../../src/core/reel/reel-length.ts';
import { convertUnit, UNITS, type UnitName } from '../../src/quantity/units.ts';

// An independent library of units against ours: every unit that both know, and a few length sums.

/** Our unit and the same in mathjs. */
const COUNTERPARTS: Partial<Readonly<Record<UnitName, string>>> = {
  s: 's',
  ms: 'ms',
  us: 'us',
  min: 'minute',
  h: 'hour',
  Hz: 'Hz',
  kHz: 'kHz',
  mm: 'mm',
  um: 'um',
  cm: 'cm',
  m: 'm',
  in: 'inch',
  ft: 'foot',
  mm2: 'mm^2',
  cubicMetre: 'm^3',
  cubicFoot: 'foot^3',
  millilitre: 'cm^3',
  deg: 'deg',
  arcmin: 'arcmin',
  celsius: 'degC',
  fahrenheit: 'degF',
  byte: 'byte',
  kB: 'kB',
  MB: 'MB',
  GB: 'GB',
  TB: 'TB',
  kBps: 'kB/s',
  MBps: 'MB/s',
  kbps: 'kb/s',
  Mbps: 'Mb/s',
  mmPerSecond: 'mm/s',
  ftPerMinute: 'ft/minute',
  wattsPerMm2: 'W/mm^2',
  kelvin: 'K',
  newton: 'N',
  newtonMillimetre: 'N mm',
};

const shared = Object.keys(COUNTERPARTS) as readonly UnitName[];
const pairs = shared.flatMap((from) =>
  shared
    .filter((to) => UNITS[to].dimension === UNITS[from].dimension)
    .map((to) => [from, to] as const),
);

function convertByMathjs(value: number, from: UnitName, to: UnitName): number {
  return unit(value, COUNTERPARTS[from] ?? '').toNumber(COUNTERPARTS[to] ?? '');
}

/** Agreement of two libraries that round differently, also next to zero of a temperature. */
function expectSame(ours: number, theirs: number, size: number): void {
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-11 * Math.max(size, Math.abs(theirs)));
}

describe('our units and those of mathjs', () => {
  test('share every unit with a physical size that mathjs has', () => {
    const ownOnly = (Object.keys(UNITS) as readonly UnitName[]).filter(
      (name) => COUNTERPARTS[name] === undefined,
    );
    // Counts, ratios and rates per frame or turn; mathjs has no frames, no revolutions, no percent unit
    // and no units of light.
    expect([...new Set(ownOnly.map((name) => UNITS[name].dimension))].sort()).toEqual([
      'airChanges',
      'code',
      'fNumber',
      'frameRate',
      'frames',
      'illuminance',
      'level',
      'lightDose',
      'lightRatio',
      'lineDetail',
      'luminousFlux',
      'massConcentration',
      'money',
      'partsPerMillion',
      'percent',
      'pictureSpeed',
      'pitch',
      'pixels',
      'pulses',
      'ratio',
      'rotation',
      'sensitivity',
      'turnsPerFrame',
    ]);
    expect(shared.length).toBeGreaterThan(20);
  });

  test.each(pairs)('%s to %s', (from, to) => {
    for (const value of [1, 0.3048, 18.5, 50, 24_000 / 1001, 1e6]) {
      const size = from === 'celsius' || from === 'fahrenheit' ? 1000 : 0;
      expectSame(convertUnit(value, from, to), convertByMathjs(value, from, to), size);
    }
  });

  test('agree on any value', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        ([from, to], value) => {
          expectSame(convertUnit(value, from, to), convertByMathjs(value, from, to), 1e-6);
        },
      ),
    );
  });
});

describe('sums of length with the units of mathjs', () => {
  test('50 ft of Super 8 at 72 frames to the foot', () => {
    const length = unit(50, 'foot');
    const frames = length.toNumber('foot') * 72;
    expect(framesOnLength(length.toNumber('mm'), 'super-8', 'frames-per-foot')).toBeCloseTo(
      frames,
      9,
    );
    const time = unit(frames / 18, 's');
    expect(runningSeconds(frames, 18)).toBeCloseTo(time.toNumber('s'), 9);
    expect(time.toNumber('minute')).toBeCloseTo(3 + 1 / 3, 9);
  });

  test('400 ft of 16 mm in metres', () => {
    const metres = unit(400, 'foot').toNumber('m');
    expect(lengthMillimetresOf(16_000, '16mm', 'frames-per-foot') / 1000).toBeCloseTo(metres, 9);
  });

  test('the speed of 16 mm film at 24 frames/s in ft a minute', () => {
    const pitch = unit(0.3, 'inch');
    const speed = unit(pitch.toNumber('foot') * 24 * 60, 'foot/minute');
    expect(filmSpeedMillimetresPerSecond(24, '16mm', 'long-pitch')).toBeCloseTo(
      speed.toNumber('mm/s'),
      9,
    );
  });

  test('a 24 in reel with a 5 in hub, wound 0.0065 in thick, in feet', () => {
    const radius = (inches: number): number => unit(inches, 'inch').toNumber('foot') / 2;
    const ring = Math.PI * (radius(24) ** 2 - radius(5) ** 2);
    const feet = ring / unit(0.0065, 'inch').toNumber('foot');
    const millimetres = woundLengthMillimetres(24 * 25.4, 5 * 25.4, 0.0065 * 25.4);
    expect(convertUnit(millimetres, 'mm', 'ft') / feet).toBeCloseTo(1, 12);
  });

  test('100 pitches of Super 8 in inches', () => {
    const inches = unit(423.42, 'mm').toNumber('inch');
    expect(inches.toFixed(3)).toBe('16.670');
    expect(convertUnit(423.42, 'mm', 'in')).toBeCloseTo(inches, 12);
  });
});
