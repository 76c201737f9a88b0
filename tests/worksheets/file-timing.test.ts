import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as keepList } from '../../src/worksheets/file/keep-list/worksheet.ts';
import { worksheet as repeatPattern } from '../../src/worksheets/file/repeat-pattern/worksheet.ts';
import { worksheet as speedChange } from '../../src/worksheets/file/speed-change/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { writtenText } from './written-text.ts';

const run = (worksheet: Worksheet, entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, { readoutSeconds: '0', ...entries }));

describe('worksheet keep-list', () => {
  test('tells how far a list holds that drifts', () => {
    const { outcome } = run(keepList);
    expect(outcome?.verdict.level).toBe('care');
    expect(outcome?.verdict.sentence).toContain('of 3600 film frames are sure');
    expect(outcome?.verdict.sentence).toContain('assumed because it is not measured');
    expect(outcome?.answers['sureFilmFrames']?.value).toBeLessThan(100);
  });

  test('is content when the rate is exact and the camera fast', () => {
    const { outcome } = run(keepList, { rateErrorPercent: '0', wanderPercent: '0' });
    expect(outcome?.verdict.level).toBe('good');
    expect(outcome?.answers['sureFilmFrames']?.value).toBe(3600);
  });

  test('says beside the command that nobody asked the recording for its range, until it was', () => {
    const given = (codeRange?: string) =>
      run(keepList, codeRange === undefined ? {} : { codeRange }).outcome;
    expect(keepList.inputs.codeRange.default).toBe('not-asked');
    expect(given()?.cautions?.join(' ')).toContain('Nobody asked the recording for its range');
    expect(given()?.commands?.[0]?.text).toBe(given('limited')?.commands?.[0]?.text);
    expect(given('limited')?.cautions).toBeUndefined();
    expect(given('full-bt709')?.cautions).toBeUndefined();
    expect(given('full-bt709')?.commands?.[0]?.text).toContain('in_range=full:out_range=full');
  });

  test('leads to evidence when no number of ties is enough, and still gives the command', () => {
    const { outcome } = run(keepList, { cameraFps: '25', firstCameraFrame: '63' });
    expect(outcome?.verdict.sentence).toMatch(/No number of ties is enough.*by evidence/u);
    expect(outcome?.answers['tiesNeeded']?.text).toBe('no number is enough');
    expect(outcome?.commands).toHaveLength(1);
  });

  test('a start found by trial bounds nothing, so nothing is sure', () => {
    const { outcome } = run(keepList, { firstCameraFrame: '126.3', wanderPercent: '0' });
    expect(outcome?.answers['sureFilmFrames']?.value).toBeLessThan(
      run(keepList, { firstCameraFrame: '126', wanderPercent: '0' }).outcome?.answers[
        'sureFilmFrames'
      ]?.value ?? 0,
    );
  });

  test('a tie at both ends is not enough: the declared wander counts in between', () => {
    const tied = { lastCameraFrame: '10122', rateErrorPercent: '0' };
    const sure = (wanderPercent: string): number =>
      run(keepList, { ...tied, wanderPercent }).outcome?.answers['sureFilmFrames']?.value ??
      Number.NaN;
    expect(sure('0')).toBe(3600);
    expect(sure('0.1')).toBeLessThan(1000);
    expect(sure('0.2')).toBeLessThan(sure('0.1'));
    // Not measured is not none.
    expect(sure('')).toBeLessThan(sure('0.2'));
    const { outcome } = run(keepList, { ...tied, wanderPercent: '0.1' });
    expect(outcome?.verdict.level).toBe('care');
    const rows = outcome?.tables?.[0]?.rows ?? [];
    expect(rows.map(({ cells }) => cells[2])).toEqual(['sure', 'unsure', 'sure']);
    expect(rows[0]?.cells[1]).toBe(String((outcome?.answers['sureAroundTies']?.value ?? 0) + 1));
    expect(rows.at(-1)?.cells[1]).toBe('3600');
  });

  test('the file says of every film frame whether it is sure, as the table does', () => {
    const { outcome } = run(keepList, {
      lastCameraFrame: '10122',
      tieFilmFrames: '1201; 2401',
      tieCameraFrames: '3458; 6790',
      wanderPercent: '0.2',
    });
    const lines = writtenText(outcome?.files?.[0]).trim().split('\n').slice(1);
    expect(lines).toHaveLength(3600);
    const sure = lines.filter((line) => line.endsWith(',sure')).length;
    expect(sure).toBe(outcome?.answers['sureFilmFrames']?.value);
    expect(lines.length - sure).toBe(lines.filter((line) => line.endsWith(',unsure')).length);
    expect(lines[1200]).toMatch(/^1200,3458,/u);
    expect(lines[2400]).toMatch(/^2400,6790,/u);
  });

  test('a third tie shows a wander that both ends hide, and it counts', () => {
    // Half way the film is two film frames late.
    const { outcome } = run(keepList, {
      lastCameraFrame: '10122',
      tieFilmFrames: '1801',
      tieCameraFrames: '5132',
      wanderPercent: '0.01',
    });
    expect(outcome?.answers['provenWanderPercent']?.value).toBeGreaterThan(0.1);
    expect(outcome?.answers['wanderPercent']?.note).toContain('the ties disprove what you declare');
    // A floor is no measurement: the sheet goes back to the cautious guess.
    expect(outcome?.answers['wanderPercent']?.value).toBe(1);
    expect(outcome?.verdict.level).toBe('care');
    expect(outcome?.cautions?.join(' ')).toContain('The ties contradict');
  });

  test('the working divides what the answer divides, whichever field ties the last film frame', () => {
    const firstSum = (entries: Record<string, string>): string =>
      (run(keepList, entries).working?.()[0]?.sum ?? '').replaceAll(/\s/gu, ' ');
    const ratio = '(10 122 − 126) ÷ (3600 − 1) = 2.77744';
    expect(firstSum({ lastCameraFrame: '10122' })).toBe(ratio);
    expect(firstSum({ tieFilmFrames: '3600', tieCameraFrames: '10122' })).toBe(ratio);
    // One film frame has no other end to divide by.
    const alone = { filmFrames: '1', lastCameraFrame: '10122' };
    expect(firstSum(alone)).toBe('50 frames/s ÷ 18 frames/s = 2.77778');
    expect(run(keepList, alone).outcome?.answers['listFps']).toBeUndefined();
  });

  test('ties that do not pair or go back are told at their fields', () => {
    expect(Object.keys(run(keepList, { tieFilmFrames: '1201' }).messages)).toEqual([
      'tieCameraFrames',
    ]);
    expect(
      Object.keys(
        run(keepList, { tieFilmFrames: '1201; 1000', tieCameraFrames: '3458; 6790' }).messages,
      ),
    ).toEqual(['tieFilmFrames']);
  });

  test('as many ties as it asks for make its own verdict good', () => {
    const bench = {
      cameraFps: '100',
      exposureSeconds: '1/100',
      openPercent: '70',
      wanderPercent: '0.1',
    };
    const needed = run(keepList, bench).outcome?.answers['tiesNeeded']?.value ?? 0;
    expect(needed).toBeGreaterThan(2);
    expect(needed).toBeLessThan(40);
    const at = (filmFrame: number): number => 126 + Math.round((filmFrame * 100) / 18);
    const places = Array.from({ length: needed }, (_, tie) =>
      Math.round((tie * 3599) / (needed - 1)),
    );
    const inBetween = places.slice(1, -1);
    const { outcome } = run(keepList, {
      ...bench,
      lastCameraFrame: String(at(3599)),
      tieFilmFrames: inBetween.map((place) => place + 1).join('; '),
      tieCameraFrames: inBetween.map(at).join('; '),
    });
    expect(outcome?.verdict.level).toBe('good');
  });

  test('no promise and no sure film frame where rows can stay dark', () => {
    const dark = {
      filmFps: '24',
      flashesPerFrame: '2',
      exposureSeconds: '1/125',
      rateErrorPercent: '0',
      wanderPercent: '0',
    };
    const { outcome } = run(keepList, dark);
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.verdict.sentence).toContain('some rows can stay dark: no promise');
    expect(outcome?.answers['sureFilmFrames']?.value).toBe(0);
    expect(writtenText(outcome?.files?.[0])).not.toMatch(/,sure$/mu);
  });

  test('refuses a promise where even a perfect list fails, and a command where frames are short', () => {
    const blended = run(keepList, { cameraFps: '25', readoutSeconds: '16' }).outcome;
    expect(blended?.verdict.level).toBe('stop');
    const slow = run(keepList, { cameraFps: '15' }).outcome;
    expect(slow?.verdict.level).toBe('stop');
    expect(slow?.commands).toBeUndefined();
    expect(writtenText(slow?.files?.[0]).split('\n')).toHaveLength(3602);
  });

  test('the file lists every film frame with its camera frame and time', () => {
    const { outcome } = run(keepList, {
      filmFrames: '4',
      firstCameraFrame: '10',
      wanderPercent: '0',
    });
    expect(writtenText(outcome?.files?.[0])).toBe(
      'film_frame,camera_frame,time,whole\n0,10,0.200000,sure\n1,13,0.260000,sure\n2,16,0.320000,sure\n3,18,0.360000,sure\n',
    );
  });

  test('says so when the ends and the typed film rate do not agree', () => {
    const { outcome } = run(keepList, { lastCameraFrame: '5000' });
    expect(outcome?.cautions?.join(' ')).toContain('differ by more than 5 %');
    expect(
      run(keepList, { lastCameraFrame: '10120', codeRange: 'limited' }).outcome?.cautions,
    ).toBeUndefined();
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
