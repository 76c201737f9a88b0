import { describe, expect, test } from 'vitest';
import {
  openBeltMillimetres,
  pulleyForRateMillimetres,
} from '../../../src/core/gate/belt-drive.ts';
import { keystone, largestKeystoneDegrees } from '../../../src/core/gate/keystone.ts';
import { pullLimits, pullNewtons } from '../../../src/core/gate/take-up-pull.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet as keystoneSheet } from '../../../src/worksheets/gate/keystone/worksheet.ts';
import { worksheet as pullSheet } from '../../../src/worksheets/gate/take-up-pull/worksheet.ts';
import { expectRelative } from '../relative.ts';

describe('pulley and belt', () => {
  test('give the rates worked out by hand', () => {
    expectRelative(pulleyForRateMillimetres(20, 18, 50 / 3), 18.52, 0.0005);
    expectRelative(pulleyForRateMillimetres(20, 24, 25), 20.83, 0.0005);
    expectRelative(pulleyForRateMillimetres(20, 15, 18), 24);
  });

  test('the belt is as long as its two straights and two arcs', () => {
    expectRelative(openBeltMillimetres(60, 20, 120), 369, 0.0005);
    for (const [large, small, centre] of [
      [60, 20, 120],
      [40, 40, 90],
      [80, 30, 150],
    ] as const) {
      const slope = Math.asin((large - small) / 2 / centre);
      const exact =
        2 * centre * Math.cos(slope) +
        (large / 2) * (Math.PI + 2 * slope) +
        (small / 2) * (Math.PI - 2 * slope);
      expectRelative(openBeltMillimetres(large, small, centre), exact, 1e-3);
    }
    expect(() => openBeltMillimetres(60, 20, 40)).toThrow(/touch/u);
  });
});

describe('the pull of the take-up', () => {
  test('has the printed limits for 16 mm: 3 to 10 oz, brake 3 oz', () => {
    const { leastNewtons, mostNewtons, mostBrakeNewtons } = pullLimits(15.95);
    expectRelative(leastNewtons, 0.83, 0.01);
    expectRelative(mostNewtons, 2.78, 0.001);
    expectRelative(mostBrakeNewtons, 0.83, 0.01);
  });

  test('400 ft of 16 mm fit one clutch, a hub of 16 mm under 62 mm does not', () => {
    // 0.834 N × 85.7 mm on a hub of 31.75 mm.
    expectRelative(pullNewtons(71.5, 2 * 31.75), 2.25, 0.002);
    const run = (entries: Record<string, string>) =>
      evaluate(pullSheet, fillEntries(pullSheet.inputs, { gauge: '16mm', ...entries })).outcome!;
    const wide = run({ hubDiameterMillimetres: '63.5', fullDiameterMillimetres: '171.4' });
    expect(wide.answers['hubNewtons']!.level).toBe('good');
    expectRelative(wide.answers['ratio']!.value!, 2.7, 0.001);
    const narrow = run({ hubDiameterMillimetres: '32', fullDiameterMillimetres: '124' });
    expect(narrow.answers['hubNewtons']!.level).toBe('stop');
    const hub = /at least (\d+)/u.exec(narrow.verdict.sentence)![1]!;
    const mended = run({ hubDiameterMillimetres: hub, fullDiameterMillimetres: '124' });
    expect(mended.answers['hubNewtons']!.level).toBe('good');
  });

  test('is good only when all three were measured and fit', () => {
    const level = (entries: Record<string, string>) =>
      evaluate(pullSheet, fillEntries(pullSheet.inputs, { gauge: '16mm', ...entries })).outcome!
        .verdict.level;
    const fine = { emptyPullNewtons: '2.5', fullPullNewtons: '0.9', brakeNewtons: '0.5' };
    expect(level({})).toBe('care');
    expect(level(fine)).toBe('good');
    for (const missing of Object.keys(fine)) expect(level({ ...fine, [missing]: '' })).toBe('care');
    expect(level({ ...fine, emptyPullNewtons: '3' })).toBe('stop');
    expect(level({ ...fine, fullPullNewtons: '0.7' })).toBe('stop');
    expect(level({ ...fine, brakeNewtons: '0.9' })).toBe('stop');
  });
});

describe('a camera beside the screen', () => {
  test.each([
    [5, 2.6, 0.4],
    [10, 5.3, 1.5],
  ])('at %d° sees sides that differ by %d %%', (angle, sides, squeeze) => {
    const seen = keystone(1000, 300, angle);
    expectRelative(seen.sidesPercent, sides, 0.02);
    expectRelative(seen.squeezePercent, squeeze, 0.06);
  });

  test('sees what a pinhole sees', () => {
    const angle = (12 * Math.PI) / 180;
    const side = (x: number) => 1 / (800 + x * Math.sin(angle));
    const { sidesPercent } = keystone(800, 250, 12);
    expectRelative(1 + sidesPercent / 100, side(-125) / side(125), 1e-12);
  });

  test('is told an angle that then passes', () => {
    for (const distance of ['600', '1000', '3000']) {
      for (const width of ['150', '300', '500']) {
        const run = (angleDegrees: string) =>
          evaluate(
            keystoneSheet,
            fillEntries(keystoneSheet.inputs, {
              distanceMillimetres: distance,
              widthMillimetres: width,
              angleDegrees,
            }),
          ).outcome!;
        const named = String(run('60').answers['largestDegrees']!.value);
        expect(run('60').verdict.level).toBe('care');
        expect(run(named).verdict.level, `${distance} ${width} ${named}`).toBe('good');
      }
    }
    expectRelative(keystone(1000, 300, largestKeystoneDegrees(1000, 300, 2)).sidesPercent, 2, 1e-9);
  });
});
