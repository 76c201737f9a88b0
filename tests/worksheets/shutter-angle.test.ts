import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/gate/shutter-angle/worksheet.ts';

const evaluated = (entries: Entries) => evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const plain = (text: string | undefined): string => (text ?? '').replaceAll(/\s/gu, ' ');

describe('shutter angle', () => {
  test('1/54 s is 166.7° at 25 frames/s', () => {
    const { outcome } = evaluated({});
    expect(plain(outcome?.verdict.sentence)).toBe(
      '1/54 s is a shutter angle of 166.7° at 25 frames/s.',
    );
  });

  test.each([
    ['24', '1/48', '180°'],
    ['24', '1/50', '172.8°'],
    ['24', '1/60', '144°'],
    ['24', '1/96', '90°'],
    ['18', '1/36', '180°'],
  ])('at %s frames/s %s s is %s', (cameraFps, exposureSeconds, angle) => {
    const { outcome } = evaluated({ cameraFps, exposureSeconds });
    expect(plain(outcome?.answers['angleDegrees']?.text)).toBe(angle);
  });

  test('an angle typed in comes out again', () => {
    const { outcome } = evaluated({ cameraFps: '30000/1001', exposureSeconds: '200°' });
    expect(plain(outcome?.answers['angleDegrees']?.text)).toBe('200°');
    expect(
      plain(evaluated({ exposureSeconds: '360°' }).outcome?.answers['angleDegrees']?.text),
    ).toBe('360°');
  });

  test('the table names rates exactly and says where the time does not fit', () => {
    const rows = evaluated({ otherRates: '30000/1001; 60' }).outcome?.tables?.[0]?.rows ?? [];
    expect(rows.map(({ cells }) => plain(cells[0]))).toEqual(['30000/1001 (29.97)', '60']);
    expect(rows[1]?.cells[1]).toBe('does not fit');
  });

  test('refuses a time longer than the camera frame', () => {
    expect(Object.keys(evaluated({ exposureSeconds: '1/20' }).messages)).toEqual([
      'exposureSeconds',
    ]);
  });
});
