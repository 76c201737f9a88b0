import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { WOUND_THICKNESS } from '../../src/core/reel/reel-length.ts';
import { worksheet as filmLength } from '../../src/worksheets/reel/film-length/worksheet.ts';
import { worksheet as reelLength } from '../../src/worksheets/reel/reel-length/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const value = (evaluation: Evaluation, key: string): number =>
  evaluation.outcome?.answers[key]?.value ?? Number.NaN;
const plain = (text: string | undefined): string => (text ?? '').replaceAll(/\s/gu, ' ');

describe('worksheet film-length', () => {
  test('answers 50 ft of Super 8 with 3600 frames and 3 min 20 s', () => {
    const evaluation = run(filmLength);
    expect(value(evaluation, 'frames')).toBe(3600);
    expect(value(evaluation, 'runningSeconds')).toBe(200);
    expect(plain(evaluation.outcome?.verdict.sentence)).toContain('72 frames to the foot');
  });

  test('gives the same three numbers whichever of them is known', () => {
    const byLength = run(filmLength, { lengthMetres: '100 ft' });
    const byFrames = run(filmLength, { known: 'frames', frames: '7200' });
    const byTime = run(filmLength, { known: 'time', runningSeconds: '6:40' });
    for (const key of ['frames', 'lengthMetres', 'lengthFeet', 'runningSeconds']) {
      expect(value(byFrames, key)).toBeCloseTo(value(byLength, key), 6);
      expect(value(byTime, key)).toBeCloseTo(value(byLength, key), 6);
    }
  });

  test('says which rule it counts by', () => {
    const sentence = run(filmLength, { lengthRule: 'long-pitch' }).outcome?.verdict.sentence;
    expect(plain(sentence)).toContain('at 4.234 mm to the frame');
  });

  test('puts the missing short pitch of 9.5 mm beside the rule', () => {
    const { messages, outcome } = run(filmLength, { gauge: '9.5mm', lengthRule: 'short-pitch' });
    expect(outcome).toBeUndefined();
    expect(Object.keys(messages)).toEqual(['lengthRule']);
  });

  // Feet, frames, then seconds at 16, 16 2/3, 18, 24 and 25 frames/s, worked out by hand.
  test.each([
    [
      '8mm-type-r',
      '50 ft',
      4000,
      ['4 min 10 s', '4 min', '3 min 42 s', '2 min 47 s', '2 min 40 s'],
    ],
    [
      'super-8',
      '50 ft',
      3600,
      ['3 min 45 s', '3 min 36 s', '3 min 20 s', '2 min 30 s', '2 min 24 s'],
    ],
    [
      '16mm',
      '400 ft',
      16_000,
      ['16 min 40 s', '16 min', '14 min 49 s', '11 min 07 s', '10 min 40 s'],
    ],
  ])('tabulates %s, %s, at the usual rates', (gauge, lengthMetres, frames, times) => {
    const evaluation = run(filmLength, { gauge, lengthMetres });
    expect(value(evaluation, 'frames')).toBeCloseTo(frames, 6);
    const rows = evaluation.outcome?.tables?.[0]?.rows ?? [];
    expect(rows.map(({ cells }) => plain(cells[1]))).toEqual(times);
  });

  test.each([
    ['8mm-type-r', '180 m', 47_244, 2953, 2625],
    ['super-8', '180 m', 42_513, 2657, 2362],
    ['9.5mm', '180 m', 23_873, 1492, 1326],
    ['16mm', '180 m', 23_622, 1476, 1312],
    ['super-8', '15 m', 3543, 221, 197],
    ['8mm-type-r', '7.5 m', 1969, 123, 109],
  ])('%s, %s: %i frames by the pitch, %i s at 16 and %i s at 18', (gauge, length, frames, a, b) => {
    const entries = { gauge, lengthMetres: length, lengthRule: 'long-pitch' };
    const at16 = run(filmLength, { ...entries, filmFps: '16' });
    expect(Math.round(value(at16, 'frames'))).toBe(frames);
    expect(Math.round(value(at16, 'runningSeconds'))).toBe(a);
    expect(
      Math.round(value(run(filmLength, { ...entries, filmFps: '18' }), 'runningSeconds')),
    ).toBe(b);
  });
});

describe('worksheet reel-length', () => {
  test('gives the length of a full 400 ft reel of 16 mm', () => {
    const evaluation = run(reelLength, {
      outerDiameterMillimetres: '6 3/4 in',
      coreDiameterMillimetres: '2 1/2 in',
      filmKind: 'acetate-colour',
      diameterErrorMillimetres: '0',
    });
    expect(value(evaluation, 'mostMetres') / 0.3048).toBeCloseTo(395.8, 1);
    expect(value(evaluation, 'leastMetres')).toBeLessThan(value(evaluation, 'lengthMetres'));
  });

  test('turns round: the length it gives reaches the diameter it was given', () => {
    const first = run(reelLength, { outerDiameterMillimetres: '120' });
    const second = run(reelLength, {
      known: 'length',
      lengthMetres: `${value(first, 'lengthMetres')} m`,
    });
    expect(value(second, 'outerDiameterMillimetres')).toBeCloseTo(120, 6);
  });

  test('prints no more digits than are known', () => {
    const { outcome } = run(reelLength, { filmKind: 'acetate-colour' });
    const printed = (key: string): string => plain(outcome?.answers[key]?.text);
    expect(printed('lengthMetres')).toBe('56 m');
    expect(printed('frames')).toMatch(/^\d+ \d00 frames$/u);
    expect(printed('runningSeconds')).toMatch(/^\d+ min (?:\d0 s)?$/u);
    expect(outcome?.verdict.sentence).not.toMatch(/\d\.\d/u);
  });

  test('keeps what it prints as least and most outside the range', () => {
    for (const filmKind of ['unknown', 'acetate-unsure', 'polyester-print']) {
      const { outcome } = run(reelLength, { filmKind });
      const number = (key: string): number => Number.parseFloat(outcome?.answers[key]?.text ?? '');
      expect(number('leastMetres')).toBeLessThanOrEqual(
        value(run(reelLength, { filmKind }), 'leastMetres'),
      );
      expect(number('mostMetres')).toBeGreaterThanOrEqual(
        value(run(reelLength, { filmKind }), 'mostMetres'),
      );
    }
  });

  test('opens with film that nobody looked at, and covers every kind', () => {
    const unknown = run(reelLength);
    expect(unknown.outcome?.verdict.level).toBe('care');
    for (const filmKind of Object.keys(WOUND_THICKNESS)) {
      const kind = run(reelLength, { filmKind });
      expect(value(unknown, 'leastMetres')).toBeLessThanOrEqual(value(kind, 'leastMetres'));
      expect(value(unknown, 'mostMetres')).toBeGreaterThanOrEqual(value(kind, 'mostMetres'));
    }
  });

  test('takes a measured thickness over the kind of film', () => {
    const measured = run(reelLength, { filmKind: 'unknown', measuredMillimetres: '0.1651' });
    expect(value(measured, 'mostMetres')).toBeCloseTo(
      value(run(reelLength, { filmKind: 'acetate-colour' }), 'mostMetres'),
      6,
    );
    expect(value(measured, 'errorPercent')).toBeLessThan(10);
  });

  test('is as far off in the printed tables as their notes say', () => {
    for (const [filmKind, core, diameter, percent] of [
      ['acetate-unsure', '50', '60', 34],
      ['acetate-unsure', '32', '70', 18],
      ['acetate-unsure', '32', '180', 13],
    ] as const) {
      const { outcome } = run(reelLength, {
        filmKind,
        coreDiameterMillimetres: core,
        outerDiameterMillimetres: diameter,
      });
      expect(outcome?.answers['errorPercent']?.value).toBeLessThan(percent);
      expect(outcome?.answers['errorPercent']?.value).toBeGreaterThan(percent - 6);
    }
  });

  test('gives fewer metres for a striped film', () => {
    const unstriped = value(run(reelLength, { filmKind: 'acetate-unsure' }), 'lengthMetres');
    const striped = value(run(reelLength, { filmKind: 'acetate-striped' }), 'lengthMetres');
    expect(striped / unstriped).toBeCloseTo(0.9, 2);
  });

  test('warns that the thickness of thin polyester is from memory', () => {
    const { outcome } = run(reelLength, { filmKind: 'polyester-thin' });
    expect(outcome?.cautions?.join(' ')).toContain('from memory');
  });

  test('refuses film smaller than its core at the outer diameter', () => {
    const { messages } = run(reelLength, { outerDiameterMillimetres: '30' });
    expect(Object.keys(messages)).toEqual(['outerDiameterMillimetres']);
  });
});
