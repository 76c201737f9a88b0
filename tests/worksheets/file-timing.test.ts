import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/evaluate.ts';
import { worksheet as keepList } from '../../src/worksheets/keep-list.ts';
import { worksheet as repeatPattern } from '../../src/worksheets/repeat-pattern.ts';
import { worksheet as speedChange } from '../../src/worksheets/speed-change.ts';
import type { Worksheet } from '../../src/worksheets/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));

describe('worksheet keep-list', () => {
  test('tells how far a list holds that drifts', () => {
    const { outcome } = run(keepList);
    expect(outcome?.verdict.level).toBe('care');
    expect(outcome?.verdict.sentence).toContain('first 199 of 3600');
  });

  test('is content when the rate is exact and the camera fast', () => {
    const { outcome } = run(keepList, { rateErrorPercent: '0' });
    expect(outcome?.verdict.level).toBe('good');
    expect(outcome?.answers['sureFilmFrames']?.value).toBe(3600);
  });

  test('asks for a check when the start cannot be read finely enough', () => {
    const { outcome } = run(keepList, { cameraFps: '25', firstCameraFrame: '63' });
    expect(outcome?.verdict.sentence).toContain('move the start');
    expect(outcome?.commands).toHaveLength(1);
  });

  test('refuses a promise where even a perfect list fails, and a command where frames are short', () => {
    const blended = run(keepList, { cameraFps: '25', readoutSeconds: '16' }).outcome;
    expect(blended?.verdict.level).toBe('stop');
    const slow = run(keepList, { cameraFps: '15' }).outcome;
    expect(slow?.verdict.level).toBe('stop');
    expect(slow?.commands).toBeUndefined();
    expect(slow?.files?.[0]?.text.split('\n')).toHaveLength(3602);
  });

  test('the file lists every film frame with its camera frame and time', () => {
    const { outcome } = run(keepList, { filmFrames: '4', firstCameraFrame: '10' });
    expect(outcome?.files?.[0]?.text).toBe(
      'film_frame,camera_frame,time\n0,10,0.200000\n1,13,0.260000\n2,16,0.320000\n3,18,0.360000\n',
    );
  });

  test('says so when the ends and the typed film rate do not agree', () => {
    const { outcome } = run(keepList, { lastCameraFrame: '5000' });
    expect(outcome?.cautions?.join(' ')).toContain('differ by more than 5 %');
    expect(run(keepList, { lastCameraFrame: '10120' }).outcome?.cautions).toBeUndefined();
  });

  test('puts a last frame before the first beside its field', () => {
    expect(Object.keys(run(keepList, { lastCameraFrame: '20' }).messages)).toEqual([
      'lastCameraFrame',
    ]);
    expect(Object.keys(run(keepList, { firstCameraFrame: '20.25' }).messages)).toEqual([
      'firstCameraFrame',
    ]);
  });
});

describe('worksheet repeat-pattern', () => {
  test('draws the pattern that it prints', () => {
    const { outcome } = run(repeatPattern, { deliveryFps: '50' });
    const [picture] = outcome?.pictures ?? [];
    expect(picture).toMatchObject({
      name: 'repeat-pattern',
      repeats: [3, 3, 3, 3, 2, 3, 3, 3, 2],
    });
    expect(outcome?.answers['pattern']?.text).toBe('3 3 3 3 2 3 3 3 2');
  });

  test('calls even repeats even and lost frames lost', () => {
    const even = run(repeatPattern, { nativeFps: '25', deliveryFps: '50' }).outcome;
    expect(even?.verdict.level).toBe('good');
    const lost = run(repeatPattern, { nativeFps: '24', deliveryFps: '18' }).outcome;
    expect(lost?.verdict.level).toBe('stop');
    expect(lost?.answers['lostFilmFrames']?.value).toBe(900);
    const trace = { nativeFps: '18', deliveryFps: '17.99', filmFrames: '100' };
    expect(run(repeatPattern, trace).outcome?.verdict.level).toBe('care');
  });

  test('does not list a pattern that goes on for ever', () => {
    const { outcome } = run(repeatPattern, { nativeFps: '17.98765' });
    expect(outcome?.answers['pattern']?.text).toMatch(/…$/u);
  });
});

describe('worksheet speed-change', () => {
  test('grades the change', () => {
    expect(run(speedChange).outcome?.verdict.level).toBe('care');
    expect(run(speedChange, { shownFps: '18' }).outcome?.verdict.level).toBe('good');
    const television = run(speedChange, { nativeFps: '24', shownFps: '25' }).outcome;
    expect(television?.verdict.level).toBe('note');
  });
});
