import { describe, expect, test } from 'vitest';
import {
  mirrorLengthMillimetres,
  shortestFocalLengthMillimetres,
  squarenessDegrees,
} from '../../../src/core/gate/lens-place.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/gate/lens-place/worksheet.ts';
import { expectRelative } from '../relative.ts';

const run = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries)).outcome!;

// Worked out by hand from the lens formula 1/f = 1/u + 1/v, whole millimetres.
const PLACES = [
  ['super-8', '50', '13.2', 2.49, 70, 174, 244],
  ['super-8', '50', '23.5', 4.43, 61, 271, 333],
  ['super-8', '50', '35.9', 6.76, 57, 388, 445],
  ['super-8', '80', '23.5', 4.43, 98, 434, 532],
  ['16mm', '50', '13.2', 1.37, 87, 118, 205],
  ['16mm', '50', '23.5', 2.44, 70, 172, 242],
  ['8mm-type-r', '50', '23.5', 5.38, 59, 319, 378],
  ['9.5mm', '50', '23.5', 2.87, 67, 193, 261],
] as const;

describe('the place of the lens', () => {
  test.each(PLACES)('%s, %s mm, sensor of %s mm', (gauge, focal, sensor, m, u, v, total) => {
    const { answers } = run({
      gauge,
      focalLengthMillimetres: focal,
      sensorWidthMillimetres: sensor,
      fillPercent: '100',
    });
    const value = (key: string) => answers[key]!.value!;
    expectRelative(value('magnification'), m, 0.003);
    expectRelative(value('toFilmMillimetres'), u, 0.01);
    expectRelative(value('toSensorMillimetres'), v, 0.005);
    expectRelative(value('totalMillimetres'), total, 0.005);
    const focalFromBoth = 1 / (1 / value('toFilmMillimetres') + 1 / value('toSensorMillimetres'));
    expectRelative(focalFromBoth, Number(focal), 1e-9);
  });

  test('names a lens that then clears the machine', () => {
    for (const gauge of ['8mm-type-r', 'super-8', '9.5mm', '16mm']) {
      for (const noseMillimetres of ['20', '45', '90', '150']) {
        const entries = { gauge, noseMillimetres, focalLengthMillimetres: '12' };
        const first = run(entries);
        expect(first.verdict.level).toBe('stop');
        const named = /at least ([\d.]+)/u.exec(first.verdict.sentence)![1]!;
        const second = run({ ...entries, focalLengthMillimetres: named });
        expect(second.verdict.level, `${gauge} ${noseMillimetres} ${named}`).toBe('good');
      }
    }
    expectRelative(shortestFocalLengthMillimetres(75, 2), 50);
  });
});

describe('squareness', () => {
  test('keeps both sides of a turned film within the depth', () => {
    // Depth of 0.016 and 0.032 mm on 5.31 mm, and 0.3 mm over 100 mm.
    expectRelative(squarenessDegrees(0.016, 5.31), 0.17, 0.02);
    expectRelative(squarenessDegrees(0.032, 5.31), 0.34, 0.02);
    const angle = (squarenessDegrees(0.016, 5.31) * Math.PI) / 180;
    expectRelative((5.31 / 2) * Math.tan(angle), 0.008, 1e-9);
    expectRelative(100 * Math.tan(angle), 0.3, 0.01);
  });
});

describe('the mirror', () => {
  test('catches every ray from the picture to the opening', () => {
    const size = mirrorLengthMillimetres(5.31, 80, 4.43, 5.6, 40);
    expectRelative(size, 12.7, 0.01);
    // Outermost rays: from an edge of the film to the same edge of the opening, at 40 of 98 mm.
    const toLens = 80 * (1 + 1 / 4.43);
    const edge = 5.31 / 2 + ((80 / 5.6 / 2 - 5.31 / 2) * 40) / toLens;
    expectRelative(size, 2 * edge * Math.SQRT2, 1e-9);
  });
});
