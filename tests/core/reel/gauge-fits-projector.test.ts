import { describe, expect, test } from 'vitest';
import { gaugeFitsProjector } from '../../../src/core/reel/gauge-fits-projector.ts';
import { GAUGE_IDS } from '../../../src/core/reel/gauges.ts';

/**
 * Frames until the claw comes down on film instead of a hole: claw and holes are walked along the
 * film, mm by the published steps. A claw needs a hole under its whole tip.
 */
function framesUntilTorn(clawStep: number, filmStep: number, play: number): number {
  for (let frame = 1; frame <= 1000; frame += 1) {
    const claw = frame * clawStep;
    const nearestHole = Math.round(claw / filmStep) * filmStep;
    if (Math.abs(claw - nearestHole) > play) return frame;
  }
  return Number.POSITIVE_INFINITY;
}

describe('a reel and a projector', () => {
  test.each([
    ['8mm-type-r', 'super-8', 0.424],
    ['super-8', '8mm-type-r', -0.424],
  ] as const)('%s is stopped on a %s machine: the claw does not fit', (reel, machine, miss) => {
    const { level, sentence, stepDifferenceMillimetres } = gaugeFitsProjector(reel, machine);
    expect(level).toBe('stop');
    expect(stepDifferenceMillimetres).toBeCloseTo(miss, 9);
    expect(sentence).toContain('0.424 mm');
    expect(sentence).toContain('3.810');
    expect(sentence).toContain('4.234');
  });

  test('walking claw and holes along the film, the wrong 8 mm tears within two frames', () => {
    // Steps as the standards print them; a tip may be a third of a millimetre off its hole.
    expect(framesUntilTorn(4.234, 3.81, 0.33)).toBeLessThanOrEqual(2);
    expect(framesUntilTorn(3.81, 4.234, 0.33)).toBeLessThanOrEqual(2);
    expect(framesUntilTorn(4.234, 4.234, 0.33)).toBe(Number.POSITIVE_INFINITY);
  });

  test.each(['8mm-type-r', 'super-8', '9.5mm', '16mm'] as const)('%s fits its own', (gauge) => {
    expect(gaugeFitsProjector(gauge, gauge).level).toBe('good');
  });

  test('only a machine of the same gauge is good, whatever the pair', () => {
    for (const reel of GAUGE_IDS) {
      for (const machine of GAUGE_IDS) {
        const { level, sentence } = gaugeFitsProjector(reel, machine);
        if (reel !== machine) expect(level).not.toBe('good');
        expect(sentence.endsWith('.')).toBe(true);
      }
    }
  });

  test('never lets 35 mm or Super 16 onto the bench', () => {
    for (const machine of GAUGE_IDS) {
      expect(gaugeFitsProjector('35mm', machine).level).toBe('stop');
      expect(gaugeFitsProjector('super-16', machine).level).toBe('stop');
    }
    expect(gaugeFitsProjector('35mm', '35mm').sentence).toContain('nitrate');
  });

  test('reminds of the teeth when 16 mm runs on 16 mm', () => {
    expect(gaugeFitsProjector('16mm', '16mm').sentence).toContain('one row of holes');
  });

  test('9.5 mm on a 16 mm machine is a matter of width, though the steps are near', () => {
    expect(gaugeFitsProjector('9.5mm', '16mm').sentence).toContain('too narrow');
  });
});
