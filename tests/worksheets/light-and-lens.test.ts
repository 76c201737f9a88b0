import { describe, expect, test } from 'vitest';
import { worksheet as densityRange } from '../../src/worksheets/gate/density-range/worksheet.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as lensSetup } from '../../src/worksheets/gate/lens-setup/worksheet.ts';
import { worksheet as lightStops } from '../../src/worksheets/gate/light-stops/worksheet.ts';
import { worksheet as sampling } from '../../src/worksheets/gate/sampling/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string>): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const value = (evaluation: Evaluation, key: string): number =>
  evaluation.outcome!.answers[key]!.value!;
const sentence = (evaluation: Evaluation): string =>
  evaluation.outcome!.verdict.sentence.replaceAll('\u00a0', ' ');
const same = { toExposureSeconds: '1/50', toFNumber: '5.6', toSensitivity: '100' };

describe('the worksheet on stops', () => {
  test('finds nothing to say when nothing changes', () => {
    const evaluation = run(lightStops, same);
    expect(value(evaluation, 'totalStops')).toBe(0);
    expect(evaluation.outcome!.verdict.level).toBe('good');
  });

  test('says brighter and darker the right way round', () => {
    const brighter = run(lightStops, { ...same, toSensitivity: '200' });
    expect(sentence(brighter)).toContain('1 stop brighter: the first times 2');
    const darker = run(lightStops, { ...same, addedDensity: '0.60206' });
    expect(sentence(darker)).toContain('2 stops darker: the first divided by 4');
  });

  test('offers settings that really bring the brightness back', () => {
    const first = run(lightStops, { toExposureSeconds: '1/108', toFNumber: '4' });
    const opened = run(lightStops, {
      toExposureSeconds: '1/108',
      toFNumber: String(value(first, 'balancingFNumber')),
    });
    expect(value(opened, 'totalStops')).toBeCloseTo(0, 9);
    const raised = run(lightStops, {
      toExposureSeconds: '1/108',
      toFNumber: '4',
      toSensitivity: String(value(first, 'balancingSensitivity')),
    });
    expect(value(raised, 'totalStops')).toBeCloseTo(0, 9);
  });

  test('reads shutter angles at the camera rate', () => {
    const angle = run(lightStops, { ...same, fromExposureSeconds: '90°', cameraFps: '25' });
    expect(value(angle, 'exposureStops')).toBeCloseTo(1, 9);
  });
});

describe('the worksheet on range', () => {
  test('lists one exposure for each that it asks for', () => {
    for (const maximumDensity of ['1', '2.5', '3.3', '4', '5.9']) {
      const evaluation = run(densityRange, { maximumDensity, spacingStops: '1.5' });
      expect(evaluation.outcome!.tables![0]!.rows).toHaveLength(value(evaluation, 'count'));
    }
  });

  test('warns of seams only when neighbours share less than a stop', () => {
    const wide = run(densityRange, { cameraStops: '4', spacingStops: '3.5' });
    expect(wide.outcome!.cautions).toHaveLength(1);
    const close = run(densityRange, { cameraStops: '4', spacingStops: '2' });
    expect(close.outcome!.cautions).toEqual([]);
  });

  test('names the field when the densities are swapped or the step leaves gaps', () => {
    expect(run(densityRange, { minimumDensity: '3', maximumDensity: '1' }).messages).toHaveProperty(
      'maximumDensity',
    );
    expect(run(densityRange, { cameraStops: '4', spacingStops: '5' }).messages).toHaveProperty(
      'spacingStops',
    );
  });
});

describe('the worksheet on the lens', () => {
  test('takes the width of the gauge unless one is typed', () => {
    const byGauge = run(lensSetup, { gauge: 'super-8' });
    const typed = run(lensSetup, { gauge: '16mm', pictureWidthMillimetres: '5.31' });
    expect(value(typed, 'magnification')).toBe(value(byGauge, 'magnification'));
    expect(byGauge.working!()[0]!.words).toContain('quoted second-hand');
    expect(typed.working!()[0]!.words).toContain('as you entered it');
  });

  test('turns from good to care exactly at the largest sharp f-number', () => {
    const limit = value(run(lensSetup, {}), 'largestSharpFNumber');
    const level = (fNumber: number): string =>
      run(lensSetup, { fNumber: String(fNumber) }).outcome!.verdict.level;
    expect(level(limit * 0.999)).toBe('good');
    expect(level(limit * 1.001)).toBe('care');
  });

  test('at half size on a sensor as wide as twice the picture is life size doubled', () => {
    const evaluation = run(lensSetup, {
      pictureWidthMillimetres: '10',
      sensorWidthMillimetres: '20',
      fillPercent: '100',
      focalLengthMillimetres: '60',
      fNumber: '4',
    });
    expect(value(evaluation, 'magnification')).toBe(2);
    expect(value(evaluation, 'extensionMillimetres')).toBe(120);
    expect(value(evaluation, 'filmDistanceMillimetres')).toBe(90);
    expect(value(evaluation, 'effectiveFNumber')).toBe(12);
  });

  test('draws a disc that crosses the accepted blur at the largest sharp f-number', () => {
    const evaluation = run(lensSetup, { fNumber: '20' });
    const [picture] = evaluation.outcome!.pictures!;
    if (picture?.name !== 'curve') throw new Error('there is no curve');
    const [start, end] = picture.curves[0]!.points;
    const slope = (end!.y - start!.y) / (end!.x - start!.x);
    const crossing = start!.x + (picture.curves[1]!.points[0]!.y - start!.y) / slope;
    expect(crossing).toBeCloseTo(value(evaluation, 'largestSharpFNumber'), 9);
    expect(picture.marks[0]!.x).toBe(20);
    expect(end!.x).toBeGreaterThan(20);
  });
});

describe('the worksheet on sampling', () => {
  test('names the lowest of the three limits', () => {
    const limitOf = (entries: Record<string, string>): string =>
      run(sampling, entries).outcome!.answers['limitedBy']!.text;
    expect(limitOf({ filmLinePairs: '20' })).toBe('the film');
    expect(limitOf({ filmLinePairs: '300', fNumber: '1' })).toBe('the pixels');
    expect(limitOf({ filmLinePairs: '300', fNumber: '32' })).toBe('the lens opening');
  });

  test('needs the pixels that it says it needs', () => {
    const needed = value(run(sampling, { filmLinePairs: '100' }), 'pixelsNeeded');
    const wide = {
      filmLinePairs: '100',
      fNumber: '0.7',
      fillPercent: '100',
      pixelsDown: '5000',
    };
    const enough = run(sampling, { ...wide, pixelsAcross: String(needed) });
    expect(enough.outcome!.verdict.level).toBe('good');
    const short = run(sampling, { ...wide, pixelsAcross: String(needed - 1) });
    expect(short.outcome!.answers['limitedBy']!.text).toBe('the pixels');
  });
});

describe('the height of the film picture', () => {
  // Printed shapes: 4.37 × 3.28, 5.31 × 4.01, 9.65 × 7.21 mm.
  const shapes = { '8mm-type-r': 4.37 / 3.28, 'super-8': 5.31 / 4.01, '16mm': 9.65 / 7.21 };

  test.each(Object.entries(shapes))(
    '%s fits at the share that the sheets name, not above',
    (gauge, shape) => {
      for (const worksheet of [lensSetup, sampling] as const) {
        const most = value(run(worksheet, { gauge }), 'largestFillPercent');
        expect(most).toBeCloseTo((1080 / 1920) * shape * 100, 1);
        const level = (fillPercent: number): string =>
          run(worksheet, { gauge, fillPercent: String(fillPercent), pixelsAcross: '1920' }).outcome!
            .verdict.level;
        expect(level(most - 0.1)).not.toBe('stop');
        expect(level(most + 0.1)).toBe('stop');
        // Ninety-five of a hundred was once the book's own default, and lost top and bottom.
        expect(level(95)).toBe('stop');
        expect(level(Number(worksheet.inputs.fillPercent.default))).not.toBe('stop');
      }
    },
  );

  test('a recording of three to two has room for more', () => {
    const evaluation = run(lensSetup, {
      fillPercent: '85',
      pixelsAcross: '1500',
      pixelsDown: '1000',
    });
    expect(evaluation.outcome!.verdict.level).not.toBe('stop');
    expect(value(evaluation, 'pictureHeightPixels')).toBeCloseTo((1275 * 4.01) / 5.31, 6);
  });
});

describe('the f-number that the lens sheet recommends', () => {
  /** Engraved on rings, third stops and the half stops between; common practice, no source. */
  const THIRD = [
    0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1,
    8, 9, 10, 11, 13, 14, 16, 18, 20, 22,
  ];
  const WHOLE = [0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22];
  const HALF = [...WHOLE, 0.85, 1.2, 1.7, 2.4, 3.3, 4.8, 6.7, 9.5, 13, 19];

  test.each([
    ['third', THIRD],
    ['half', HALF],
    ['whole', WHOLE],
    ['free', undefined],
  ] as const)(
    'is one that a ring in %s steps has, and passes the sheet itself',
    (lensSteps, engraved) => {
      for (const pixelsAcross of ['1920', '2560', '3840']) {
        for (const gauge of ['8mm-type-r', 'super-8', '9.5mm', '16mm']) {
          for (const sensorWidthMillimetres of ['6.2', '13.2', '23.5', '36']) {
            const entries = {
              ...{ gauge, pixelsAcross, sensorWidthMillimetres, lensSteps, fillPercent: '70' },
            };
            const { verdict } = run(lensSetup, { ...entries, fNumber: '30' }).outcome!;
            const advised = /to f\/(\d+(?:\.\d+)?)/u.exec(verdict.sentence)?.[1];
            expect(advised).toBeDefined();
            if (engraved !== undefined) expect(engraved).toContain(Number(advised));
            const passed = run(lensSetup, { ...entries, fNumber: advised! });
            if (passed.outcome !== undefined) expect(passed.outcome.verdict.level).toBe('good');
            // The next step of the ring is one too many.
            const next = engraved?.toSorted((a, b) => a - b).find((step) => step > Number(advised));
            if (next === undefined) continue;
            const beyond = run(lensSetup, { ...entries, fNumber: String(next) });
            expect(beyond.outcome!.verdict.level).toBe('care');
          }
        }
      }
    },
  );
});
