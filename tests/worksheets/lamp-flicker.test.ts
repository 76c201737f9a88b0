import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/gate/lamp-flicker/worksheet.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';

function outcomeOf(entries: Entries): Outcome {
  const { outcome, messages } = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
  if (outcome === undefined) throw new Error(JSON.stringify(messages));
  return outcome;
}

const valueOf = (entries: Entries, key: string): number =>
  outcomeOf(entries).answers[key]?.value ?? Number.NaN;

describe('lamp flicker', () => {
  test('a mains filament adds to a matched shutter what the shutter alone does not have', () => {
    expect(valueOf({}, 'shutterAlonePercent')).toBe(0);
    expect(valueOf({}, 'ripplePercent')).toBeGreaterThan(valueOf({}, 'lampAlonePercent'));
    expect(outcomeOf({}).verdict.level).toBe('stop');
  });

  test('a steady lamp changes nothing', () => {
    const steady = { depthPercent: '0', exposureSeconds: '1/50' };
    expect(valueOf(steady, 'ripplePercent')).toBeCloseTo(14.8148, 3);
    expect(outcomeOf(steady).verdict.sentence).toContain('comes from the shutter');
  });

  test('a fast switched LED is harmless, a slow one is not', () => {
    const led = { lampKind: 'switched', depthPercent: '100', onPercent: '30' };
    expect(outcomeOf({ ...led, lampHz: '25 kHz' }).verdict.level).toBe('good');
    expect(outcomeOf({ ...led, lampHz: '150' }).verdict.level).toBe('stop');
  });

  test('beats of lamp and camera, and of lamp and shutter', () => {
    const outcome = outcomeOf({ lampHz: '120', cameraFps: '25' });
    expect(outcome.answers['lampBeatHz']?.value).toBeCloseTo(5, 9);
    // 120 − 54 = 66 Hz lies 9 Hz below 3 × 25.
    expect(outcome.answers['differenceBeatHz']?.value).toBeCloseTo(9, 9);
  });

  test('the offered exposure holds whole lamp periods and fits the camera frame', () => {
    const seconds = valueOf({}, 'lampMatchSeconds');
    expect(seconds * 100).toBeCloseTo(Math.round(seconds * 100), 9);
    expect(seconds).toBeLessThanOrEqual(1 / 25);
    expect(outcomeOf({ lampHz: '20' }).answers['lampMatchSeconds']?.text).toBe('none fits');
  });
});
