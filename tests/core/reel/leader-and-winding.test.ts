import { describe, expect, test } from 'vitest';
import { leaderParts } from '../../../src/core/reel/leader-length.ts';
import { windingTurns } from '../../../src/core/reel/rewind-turns.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet as leaderSheet } from '../../../src/worksheets/reel/leader-length/worksheet.ts';
import { worksheet as roomSheet } from '../../../src/worksheets/reel/take-up-room/worksheet.ts';
import { expectRelative } from '../relative.ts';

const leader = (entries: Record<string, string>) =>
  evaluate(leaderSheet, fillEntries(leaderSheet.inputs, entries)).outcome!;
const room = (entries: Record<string, string>) =>
  evaluate(roomSheet, fillEntries(roomSheet.inputs, entries)).outcome!;

// Gauge, rate, path in m, hub in mm, leader worked out by hand in m.
const NEEDS = [
  ['super-8', '18', '0.9', '32', 1.81],
  ['8mm-type-r', '16', '0.9', '32', 1.69],
  ['9.5mm', '16', '1.0', '32', 2.27],
  ['16mm', '24', '1.6', '50', 3.53],
] as const;

describe('the leader', () => {
  test.each(NEEDS)('%s at %s, path %s m: %d', (gauge, filmFps, path, hub, metres) => {
    const { answers, verdict } = leader({
      gauge,
      filmFps,
      pathMillimetres: path,
      hubDiameterMillimetres: hub,
    });
    expectRelative(answers['neededMetres']!.value!, metres, 0.005);
    expect(verdict.level).toBe(metres > 3 ? 'stop' : 'good');
  });

  test.each([
    ['super-8', '18', 709, 39],
    ['8mm-type-r', '16', 787, 49],
    ['9.5mm', '16', 398, 25],
    ['16mm', '24', 394, 16],
  ])('3 m of %s at %s are %d frames, %d s', (gauge, filmFps, frames, seconds) => {
    const { answers } = leader({ gauge, filmFps });
    expect(Math.round(answers['leaderFrames']!.value!)).toBe(frames);
    expect(Math.round(answers['leaderSeconds']!.value!)).toBe(seconds);
  });

  test('fed frame by frame: the first picture comes to the gate when the parts have gone by', () => {
    const parts = leaderParts({
      pathMillimetres: 900,
      hubDiameterMillimetres: 32,
      filmFps: 18,
      stepMillimetres: 4.234,
      runUpSeconds: 5,
      markSeconds: 3,
    });
    let left = parts.totalMillimetres - 900;
    for (let turn = 0; turn < 3; turn += 1) left -= Math.PI * 32;
    let frames = 0;
    while (left > 1e-9) {
      left -= 4.234;
      frames += 1;
    }
    expect(frames).toBe(8 * 18);
  });

  test('takes a path that nobody measured at its longest', () => {
    expect(leader({}).answers['pathMetres']!.value).toBe(2);
    expect(leader({ gauge: '16mm', filmFps: '24' }).verdict.sentence).toMatch(/not measured/u);
  });

  test('is content with the length that it asks for', () => {
    for (const [gauge, filmFps] of NEEDS) {
      const first = leader({ gauge, filmFps, leaderMillimetres: '0.5' });
      const metres = /Put on ([\d.]+)/u.exec(first.verdict.sentence)![1]!;
      expect(leader({ gauge, filmFps, leaderMillimetres: metres }).verdict.level).toBe('good');
    }
  });
});

describe('winding', () => {
  test.each([
    [15_240, 32, 0.152, 102, 63],
    [60_960, 32, 0.152, 267, 113.2],
    [121_920, 63.5, 0.165, 329, 172.2],
  ])('%d mm on %d mm take turn upon turn', (length, hub, thickness, turns, across) => {
    // Turn upon turn, each one thickness wider.
    let left = length;
    let diameter = hub + thickness;
    let count = 0;
    while (left > Math.PI * diameter) {
      left -= Math.PI * diameter;
      diameter += 2 * thickness;
      count += 1;
    }
    expect(Math.abs(count - turns)).toBeLessThanOrEqual(1);
    expectRelative(windingTurns(length, hub, thickness), turns, 0.005);
    expectRelative(diameter, across, 0.01);
  });

  test('names a reel that then holds the film', () => {
    for (const lengthMetres of ['15', '60', '120', '600']) {
      for (const filmKind of ['unknown', 'acetate-striped', 'polyester-thin']) {
        const entries = { lengthMetres, filmKind, flangeDiameterMillimetres: '40' };
        const named = /at least ([\d.]+)/u.exec(room(entries).verdict.sentence)![1]!;
        const again = room({ ...entries, flangeDiameterMillimetres: named });
        expect(again.verdict.level).toBe('good');
      }
    }
  });
});
