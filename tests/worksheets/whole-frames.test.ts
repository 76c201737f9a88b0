import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';
import { worksheet } from '../../src/worksheets/file/whole-frames/worksheet.ts';

function outcomeOf(entries: Entries): Outcome {
  const { outcome, messages } = evaluate(
    worksheet,
    fillEntries(worksheet.inputs, { readoutSeconds: '16', ...entries }),
  );
  if (outcome === undefined) throw new Error(JSON.stringify(messages));
  return outcome;
}

const text = (outcome: Outcome, key: string): string =>
  (outcome.answers[key]?.text ?? '').replaceAll(/\s/gu, ' ');

describe('whole frames', () => {
  test('25 with 16 ms readout cannot promise them, 50 can', () => {
    const outcome = outcomeOf({});
    expect(outcome.verdict.level).toBe('care');
    expect(outcome.verdict.sentence).toMatch(/25.*cannot promise.*33.01 is needed.*50/u);
    expect(text(outcomeOf({ cameraFps: '50' }), 'wholeFrames')).toBe('sure for every film frame');
  });

  test('takes a readout that was not measured as a whole camera frame, and says so', () => {
    const outcome = outcomeOf({ readoutSeconds: '' });
    expect(outcome.verdict.sentence).toMatch(
      /not measured: a whole camera frame, 40\s?ms, is assumed/u,
    );
    expect(text(outcome, 'smallestCameraFps')).toBe('43.2 frames/s');
    expect(outcomeOf({}).verdict.sentence).not.toContain('not measured');
  });

  test('the readout that it calls the longest is just good enough', () => {
    const longest = outcomeOf({}).answers['longestReadoutMilliseconds']?.value ?? 0;
    const at = (milliseconds: number): string =>
      text(outcomeOf({ readoutSeconds: `${milliseconds} ms` }), 'wholeFrames');
    expect(at(longest)).toBe('sure for every film frame');
    expect(at(longest + 0.01)).toBe('not sure');
  });

  test('names no sure camera rate while a gap behind an inner blade leaves rows dark', () => {
    // Inner blades of (360° × 70 % − 20°) ÷ 2 = 116° cover 17.9 ms at 18 frames/s, longer than 1/60 s.
    const outcome = outcomeOf({
      openPercent: '30',
      pulldownBladeDegrees: '20',
      exposureSeconds: '1/60',
      readoutSeconds: '0',
    });
    expect(outcome.verdict.level).toBe('stop');
    expect(text(outcome, 'windowMilliseconds')).toBe('none');
    expect(text(outcome, 'smallestCameraFps')).toBe('none');
  });

  test('counts in table, picture and answers agree', () => {
    const outcome = outcomeOf({});
    const rows = outcome.tables?.[0]?.rows ?? [];
    const whole = rows.filter(({ cells }) => cells[5] === 'whole').length;
    expect(rows).toHaveLength(25);
    expect(outcome.answers['wholeCameraFrames']?.value).toBe(whole);
    const picture = outcome.pictures?.[0];
    if (picture?.name !== 'whole-frames') throw new Error('no picture');
    expect(picture.cameraFrames.filter(({ purity }) => purity === 1)).toHaveLength(whole);
    for (const { purity, otherFilmFrame } of picture.cameraFrames) {
      expect(otherFilmFrame === undefined).toBe(purity === 1);
    }
  });

  test('when the promise holds, no phase loses a film frame', () => {
    for (let phase = 0; phase < 100; phase += 3) {
      const outcome = outcomeOf({ cameraFps: '50', phasePercent: String(phase) });
      expect(text(outcome, 'filmFramesWithoutWhole')).toBe('0');
    }
  });

  test('at an exact 1 : 1 the phase decides, and the table shows a bad one', () => {
    const locked = {
      filmFps: '25',
      flashesPerFrame: '2',
      exposureSeconds: '1/50',
      readoutSeconds: '0',
      running: 'locked',
    };
    const good = outcomeOf(locked);
    expect(good.verdict.sentence).toContain('the phase decides');
    expect(text(good, 'filmFramesWithoutWhole')).toBe('0');
    expect(text(outcomeOf({ ...locked, phasePercent: '75' }), 'filmFramesWithoutWhole')).toBe('1');
  });

  test('reckons the rate for one flash as if that flash were the exposure entered', () => {
    const table = [
      ['16', '3', '1/48'],
      ['18', '3', '1/54'],
      ['24', '3', '1/72'],
    ] as const;
    for (const [filmFps, flashesPerFrame, flash] of table) {
      const shared = { filmFps, flashesPerFrame, cameraFps: '24', readoutSeconds: '5' };
      const any = outcomeOf({ ...shared, exposureSeconds: '1/200' });
      const matched = outcomeOf({ ...shared, exposureSeconds: flash });
      expect(text(any, 'oneFlashCameraFps')).toBe(text(matched, 'smallestCameraFps'));
      expect(text(any, 'oneFlashCameraFps')).not.toBe('none');
    }
  });

  test('names no rate for one flash where that rate has no time for the flash', () => {
    const outcome = outcomeOf({ filmFps: '24', flashesPerFrame: '2', exposureSeconds: '1/48' });
    const needed = outcome.answers['smallestCameraFps']?.value ?? 0;
    expect(needed).toBeGreaterThan(48);
    expect(text(outcome, 'oneFlashCameraFps')).toBe('none');
  });

  test('says that no camera frame can be whole when the window is closed', () => {
    const outcome = outcomeOf({
      filmFps: '30',
      cameraFps: '25',
      exposureSeconds: '1/25',
      readoutSeconds: '0',
    });
    expect(outcome.verdict.level).toBe('stop');
    expect(text(outcome, 'smallestCameraFps')).toBe('none');
    expect(text(outcome, 'wholeCameraFrames')).toBe('0');
  });

  test('cuts a long cycle and says so', () => {
    const outcome = outcomeOf({ cameraFps: '30000/1001' });
    expect(outcome.tables?.[0]?.caption).toContain('the first 60 of 5000');
    expect(outcome.answers['wholeCameraFrames']?.note).toContain('first 500');
    expect(text(outcome, 'phaseSweepSeconds')).toBe('one common cycle');
  });
});
