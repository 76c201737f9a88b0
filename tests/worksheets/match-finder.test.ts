import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/gate/match-finder/worksheet.ts';

const run = (entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));

describe('worksheet match-finder', () => {
  test('names the best setting and says of each why it stands there', () => {
    const { outcome } = run({ exposureKind: 'free', readoutSeconds: '0' });
    expect(outcome?.verdict.sentence).toContain('film 18, camera 25, exposure 1/54');
    const [best] = outcome?.tables ?? [];
    expect(best?.rows.length).toBeGreaterThan(2);
    for (const { cells } of best?.rows ?? []) {
      expect(cells.at(-1)).toMatch(/ripple .*native.*whole frames need/u);
    }
  });

  test('assumes a whole camera frame of readout until one is measured, and says so', () => {
    const { outcome } = run({ exposureKind: 'free' });
    expect(outcome?.verdict.sentence).toContain('film 18, camera 50, exposure 1/54');
    expect(outcome?.verdict.sentence).toContain('not measured: a whole camera frame is assumed');
  });

  test('lists at most twelve settings and tells how many there are', () => {
    const { outcome } = run({
      exposureKind: 'free',
      filmKind: 'range',
      fromFps: '16',
      toFps: '20',
      stepFps: '0.1',
    });
    const [best] = outcome?.tables ?? [];
    expect(best?.rows).toHaveLength(12);
    expect(best?.caption).toContain(`of ${outcome?.answers['usable']?.text}`);
  });

  test('shows typical settings that fail, each with its reason', () => {
    const { outcome } = run();
    const reasons = outcome?.tables?.[1]?.rows.map(({ cells }) => cells.at(-1)).join('\n') ?? '';
    expect(reasons).toContain('times as long as a camera frame');
    expect(reasons).toContain('the limit is 1');
    expect(reasons).toContain('whole frames need');
  });

  test('the counts add up', () => {
    const { outcome } = run();
    const value = (key: string): number => outcome?.answers[key]?.value ?? Number.NaN;
    expect(
      value('usable') +
        value('tooLong') +
        value('readoutTooLong') +
        value('tooMuchRipple') +
        value('blended'),
    ).toBe(value('combinations'));
  });

  test('says what stands in the way when nothing works', () => {
    const flicker = run({ filmRates: '18; 24', exposureTimes: '1/25; 1/50; 1/100' }).outcome;
    expect(flicker?.verdict.level).toBe('stop');
    expect(flicker?.verdict.sentence).toContain('flicker');
    const blends = run({ filmRates: '18', exposureKind: 'free', cameraRates: '20' }).outcome;
    expect(blends?.verdict.sentence).toContain('blended frames');
    const long = run({ exposureTimes: '1/10', cameraRates: '25' }).outcome;
    expect(long?.verdict.sentence).toContain('too long');
  });

  test('refuses a step that would try thousands of film rates', () => {
    const entries = { filmKind: 'range', fromFps: '1', toFps: '60', stepFps: '0.01' };
    expect(Object.keys(run(entries).messages)).toEqual(['stepFps']);
    const backwards = { filmKind: 'range', fromFps: '20', toFps: '16' };
    expect(Object.keys(run(backwards).messages)).toEqual(['toFps']);
  });

  test('names the nearest film rate that works when nothing on the bench does', () => {
    const { outcome } = run({
      filmRates: '18; 24',
      exposureTimes: '1/25; 1/50; 1/100',
      cameraRates: '25; 50',
      readoutSeconds: '0',
    });
    expect(outcome?.verdict.sentence.replaceAll(/\s/gu, ' ')).toContain(
      'The nearest film rate that would: film 16 2/3, camera 25, exposure 1/50 s (7.41 % slower than native)',
    );
  });

  test('says that the speed error alone breaks the limit', () => {
    const { outcome } = run({ exposureKind: 'free', speedErrorPercent: '2' });
    expect(outcome?.verdict.sentence.replaceAll(/\s/gu, ' ')).toContain(
      'even a perfect match ripples by 4 %',
    );
  });

  test('counts a readout that no camera frame has room for', () => {
    const { outcome } = run({ readoutSeconds: '30', exposureKind: 'free', filmRates: '18' });
    // At 50 frames/s; at 60000/1001 one flash does not fit in the first place.
    expect(outcome?.answers['readoutTooLong']?.value).toBe(1);
    expect(outcome?.answers['usable']?.value).toBe(0);
  });

  test('a wide pulldown blade leaves no even setting where blades alike do', () => {
    const entries = { exposureKind: 'free', filmRates: '18', readoutSeconds: '0' };
    expect(run(entries).outcome?.answers['usable']?.value).toBeGreaterThan(0);
    const wide = run({ ...entries, pulldownBladeDegrees: '72' }).outcome;
    expect(wide?.answers['usable']?.value).toBe(0);
    expect(wide?.answers['tooMuchRipple']?.value).toBeGreaterThan(0);
    // A soft edge alone does no harm to a match.
    expect(run({ ...entries, edgeWipeDegrees: '8' }).outcome?.answers['usable']?.value).toBe(
      run(entries).outcome?.answers['usable']?.value,
    );
  });

  test('a lamp on the mains rules out 1/54 s and leaves 1/50 s', () => {
    const lamp = {
      exposureKind: 'steps',
      exposureTimes: '1/50; 1/54',
      filmRates: '16 2/3; 18',
      cameraRates: '25; 50',
      readoutSeconds: '0',
      speedErrorPercent: '0',
      lampKind: 'smooth',
      lampHz: '100',
      depthPercent: '10',
    };
    const { outcome } = run(lamp);
    // At 50 flashes and 100 lamp waves a second one flash holds two whole waves: the lamp is in step.
    expect(outcome?.answers['bestExposureSeconds']?.text).toContain('1/50');
    const rows = outcome?.tables?.[0]?.rows.map(({ cells }) => cells[2]) ?? [];
    expect(rows.every((cell) => cell?.includes('1/50'))).toBe(true);
    expect(run({ ...lamp, lampKind: 'steady' }).outcome?.answers['usable']?.value).toBeGreaterThan(
      outcome?.answers['usable']?.value ?? 0,
    );
  });

  test('the working tells the ripple of shutter and lamp, found here by trying every pair of phases', () => {
    const { working, outcome } = run({
      ...{ exposureKind: 'steps', exposureTimes: '1/54', filmRates: '18', cameraRates: '25' },
      ...{ readoutSeconds: '0', speedErrorPercent: '0', rippleLimitPercent: '10' },
      ...{ lampKind: 'smooth', lampHz: '100', depthPercent: '10' },
    });
    expect(outcome?.answers['usable']?.value).toBe(1);
    // An exposure of one flash may start anywhere in the flash and anywhere in the wave of the lamp.
    const lightAt = (start: number, lampTurn: number): number => {
      const steps = 540;
      let light = 0;
      for (let step = 0; step < steps; step += 1) {
        const seconds = (start + (step + 0.5) / steps) / 54;
        const isOpen = (seconds * 54) % 1 < 0.5;
        if (isOpen) light += 1 + 0.1 * Math.cos(2 * Math.PI * (100 * seconds + lampTurn));
      }
      return light / steps;
    };
    const parts = Array.from({ length: 60 }, (_, index) => index / 60);
    const lights = parts.flatMap((start) => parts.map((lampTurn) => lightAt(start, lampTurn)));
    const mean = lights.reduce((sum, light) => sum + light, 0) / lights.length;
    const ripple = ((Math.max(...lights) - Math.min(...lights)) / mean) * 100;
    const steps = working?.() ?? [];
    const told = /^ripple ([\d.]+)/u.exec(steps[1]?.sum ?? '')?.[1];
    expect(Number(told)).toBeCloseTo(ripple, 1);
    expect(steps[1]?.words).toContain('shutter and lamp');
  });

  test('refuses a lamp that flickers behind unequal blades at the lamp', () => {
    const { messages } = run({ lampKind: 'smooth', pulldownBladeDegrees: '72' });
    expect(Object.keys(messages)).toEqual(['lampKind']);
  });
});
