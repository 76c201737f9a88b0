import { describe, expect, it } from 'vitest';
import { UNITS } from '../../src/quantity/units.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { readExamples } from '../content/read-content.ts';

// The name of a quantity ends in its unit. Keys of inputs and answers stand in links and in the tables
// for machines, so a key that names another unit than its number is in would mislead whoever takes it.

/** Symbols that a number may carry whose name ends so. A count of frames may go without one. */
const SYMBOLS: Readonly<Record<string, readonly string[]>> = {
  Seconds: ['s'],
  Milliseconds: ['ms'],
  Minutes: ['min'],
  Fps: ['frames/s'],
  Hz: ['Hz'],
  Kilohertz: ['kHz'],
  Micrometres: ['µm'],
  Millimetres: ['mm'],
  NewtonMillimetres: ['N·mm'],
  Metres: ['m'],
  Feet: ['ft'],
  Degrees: ['°'],
  Kelvin: ['K'],
  Celsius: ['°C'],
  Percent: ['%'],
  Stops: ['stop'],
  Decibels: ['dB'],
  Semitones: ['semitone'],
  Bytes: ['B'],
  Gigabytes: ['GB'],
  Arcminutes: ['arcmin'],
  Pixels: ['px'],
  Ppm: ['ppm'],
  Milligrams: ['mg'],
  MilligramsPerCubicMetre: ['mg/m³'],
  CubicMetres: ['m³'],
  Lux: ['lx'],
  LuxHours: ['lx·h'],
  Lumens: ['lm'],
  Newtons: ['N'],
  Watts: ['W'],
  WattsPerMm2: ['W/mm²'],
  Frames: ['frames', ''],
};

const firstUp = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The unit that a key ends in: the longest name that fits. */
const unitIn = (key: string): string | undefined =>
  Object.keys(SYMBOLS)
    .filter((name) => firstUp(key).endsWith(name))
    .toSorted((a, b) => b.length - a.length)[0];

const contradicts = (key: string, symbol: string): boolean => {
  const name = unitIn(key);
  return name !== undefined && !SYMBOLS[name]!.includes(symbol);
};

/** Every number that the sheet answers with, at its defaults and in its examples. */
const answered = [...worksheets.values()].flatMap((sheet) =>
  [{}, ...(readExamples().get(sheet.id) ?? []).map(({ entries }) => entries)].flatMap((entries) => {
    const { outcome } = evaluate(sheet, fillEntries(sheet.inputs, entries));
    return Object.entries(outcome?.answers ?? {}).flatMap(([key, { value, unit = '' }]) =>
      value === undefined ? [] : [{ id: sheet.id, key, symbol: unit }],
    );
  }),
);

const asked = [...worksheets.values()].flatMap(({ id, inputs }) =>
  Object.entries(inputs).flatMap(([key, spec]) =>
    spec.kind === 'choice' || spec.kind === 'text' || spec.unit === undefined
      ? []
      : [{ id, key, symbol: UNITS[spec.unit].symbol }],
  ),
);

const lines = (all: typeof asked): readonly string[] => [
  ...new Set(
    all
      .filter(({ key, symbol }) => contradicts(key, symbol))
      .map(({ id, key, symbol }) => `${id}: ${key} is in “${symbol}”`),
  ),
];

describe('a name that ends in a unit', () => {
  it('is that of a number in this unit, in every answer', () => {
    expect(answered.filter(({ key }) => unitIn(key) !== undefined).length).toBeGreaterThan(300);
    expect(lines(answered)).toEqual([]);
  });

  it('is that of a number in this unit, in every input', () => {
    expect(asked.filter(({ key }) => unitIn(key) !== undefined).length).toBeGreaterThan(100);
    expect(lines(asked)).toEqual([]);
  });

  it.each([
    ['pathMillimetres', 'm'],
    ['silentHz', 'kHz'],
    ['meanWatts', 'W/mm²'],
    ['dayLimitMilligrams', 'mg/m³'],
    ['torqueNewtonMillimetres', 'mm'],
    ['milliseconds', 's'],
  ])('would be noticed as wrong: %s in %s', (key, symbol) => {
    expect(lines([{ id: 'a', key, symbol }])).toEqual([`a: ${key} is in “${symbol}”`]);
  });

  it('says nothing against one that is right', () => {
    expect(lines([{ id: 'a', key: 'pathMetres', symbol: 'm' }])).toEqual([]);
    expect(lines([{ id: 'a', key: 'windowMilliseconds', symbol: 'ms' }])).toEqual([]);
  });
});
