import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { equalBladeRipplePercent } from '../../src/core/ripple.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/evaluate.ts';
import { worksheet } from '../../src/worksheets/flash-match.ts';
import type { Outcome } from '../../src/worksheets/types.ts';

const evaluated = (entries: Entries) => evaluate(worksheet, fillEntries(worksheet.inputs, entries));

function outcomeOf(entries: Entries): Outcome {
  const { outcome } = evaluated(entries);
  if (outcome === undefined) throw new Error('no outcome');
  return outcome;
}

const text = (outcome: Outcome, key: string): string =>
  (outcome.answers[key]?.text ?? '').replaceAll(/\s/gu, ' ');

describe('flash match', () => {
  test('shows the flicker of 18 frames/s at 1/50 s and its cure', () => {
    const outcome = outcomeOf({});
    expect(outcome.verdict.level).toBe('stop');
    expect(outcome.verdict.sentence).toContain('1/54');
    expect(text(outcome, 'ripplePercent')).toBe('14.8 %');
    expect(text(outcome, 'rippleStops')).toBe('0.214 stop');
    expect(text(outcome, 'beatHz')).toBe('4 Hz');
    expect(text(outcome, 'speedToleranceFps')).toBe('±0.18 frames/s');
    expect(outcome.answers['speedToleranceFps']?.note).toContain('10.8');
  });

  test('has exactly the answers that chapters and other worksheets rely on', () => {
    expect(Object.keys(outcomeOf({}).answers).sort()).toEqual(
      [
        'ripplePercent',
        'rippleStops',
        'beatHz',
        'matchingExposureSeconds',
        'speedToleranceFps',
        'bandsDownPicture',
        'bandDriftPerSecond',
        'wholeFrames',
        'smallestCameraFps',
      ].sort(),
    );
  });

  test('is satisfied with 1/54 s and a global shutter', () => {
    const outcome = outcomeOf({ exposureSeconds: '1/54', readoutSeconds: '0' });
    expect(outcome.verdict.level).toBe('good');
    expect(outcome.verdict.sentence).not.toContain('not measured');
    expect(text(outcome, 'ripplePercent')).toBe('0 %');
    expect(text(outcome, 'smallestCameraFps')).toBe('21.6 frames/s');
  });

  test('takes a readout that was not measured as a whole camera frame, and says so', () => {
    const outcome = outcomeOf({ exposureSeconds: '1/54' });
    expect(outcome.verdict.level).toBe('care');
    expect(outcome.verdict.sentence).toMatch(
      /not measured: a whole camera frame, 40\s?ms, is assumed/u,
    );
    expect(text(outcome, 'wholeFrames')).toContain('not sure');
    expect(text(outcome, 'smallestCameraFps')).toBe('43.2 frames/s');
    expect(text(outcomeOf({ exposureSeconds: '1/54', cameraFps: '50' }), 'wholeFrames')).toContain(
      'sure for every',
    );
  });

  test('says that 25 cannot promise whole frames with 16 ms readout, and that 50 can', () => {
    const outcome = outcomeOf({ exposureSeconds: '1/54', readoutSeconds: '16' });
    expect(outcome.verdict.level).toBe('care');
    expect(outcome.verdict.sentence).toMatch(/25.*cannot promise whole frames; 50 can/u);
    expect(outcome.answers['smallestCameraFps']?.value).toBeCloseTo(33, 1);
  });

  test('never names a camera rate that leaves no time for the exposure', () => {
    // 24 × 2 at 1/48 s needs 32 frames/s; at 50 frames/s 1/48 s does not fit.
    const outcome = outcomeOf({
      filmFps: '24',
      flashesPerFrame: '2',
      exposureSeconds: '1/48',
      readoutSeconds: '0',
    });
    expect(outcome.verdict.sentence).toContain('no usual rate can');
    expect(text(outcome, 'smallestCameraFps')).toBe('32 frames/s');
  });

  test('refuses an exposure longer than a camera frame at its own field', () => {
    const { outcome, messages } = evaluated({ exposureSeconds: '1/20' });
    expect(outcome).toBeUndefined();
    expect(messages['exposureSeconds']?.replaceAll(/\s/gu, ' ')).toBe(
      'Expected at most 1/25 s, because a camera at 25 frames/s has no more time for one frame. An entry looks like 1/54, 18.5 ms or 166.7°.',
    );
  });

  test('refuses a readout longer than a camera frame at its own field', () => {
    expect(Object.keys(evaluated({ readoutSeconds: '41 ms' }).messages)).toEqual([
      'readoutSeconds',
    ]);
  });

  test('accepts a shutter angle, also the full 360°', () => {
    expect(text(outcomeOf({ exposureSeconds: '360°' }), 'ripplePercent')).toBe('14.8 %');
    expect(text(outcomeOf({ exposureSeconds: '180°' }), 'ripplePercent')).toBe('14.8 %');
  });

  test('says so when no flash fits into a camera frame', () => {
    const outcome = outcomeOf({ filmFps: '2', flashesPerFrame: '1' });
    expect(text(outcome, 'matchingExposureSeconds')).toBe('none fits');
  });

  test('says so when some exposures stay dark', () => {
    const outcome = outcomeOf({ exposureSeconds: '1/500' });
    expect(text(outcome, 'rippleStops')).toBe('no limit');
    expect(text(outcome, 'smallestCameraFps')).toBe('none');
    expect(outcome.verdict.sentence).toContain('dark');
  });

  test('tells which way the bands drift', () => {
    const up = outcomeOf({ readoutSeconds: '16' });
    expect(up.answers['bandDriftPerSecond']?.note).toContain('up');
    const down = outcomeOf({ cameraFps: '30000/1001', readoutSeconds: '16' });
    expect(down.answers['bandDriftPerSecond']?.note).toContain('down');
    expect(text(down, 'beatHz')).toBe('5.94 Hz');
  });

  test('draws the exposures that it counts: the same ripple shows in the phases', () => {
    const picture = outcomeOf({}).pictures?.find(({ name }) => name === 'bands');
    if (picture?.name !== 'bands') throw new Error('no bands picture');
    const ripple =
      Math.max(...picture.exposureByPhase) * 100 - Math.min(...picture.exposureByPhase) * 100;
    expect(ripple).toBeCloseTo(14.81, 1);
    expect(picture.phaseStepPerFrame).toBeCloseTo(0.16, 9);
  });

  test('draws light that starts at 0, ends at the span and never runs backwards', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 240 }),
        (filmFps, flashes, cameraFps) => {
          const outcome = outcomeOf({
            filmFps: String(filmFps),
            flashesPerFrame: String(flashes),
            cameraFps: String(cameraFps),
            exposureSeconds: '90°',
          });
          const picture = outcome.pictures?.find(({ name }) => name === 'gate-light');
          if (picture?.name !== 'gate-light') throw new Error('no gate-light picture');
          expect(picture.light[0]?.seconds).toBe(0);
          expect(picture.light.at(-1)?.seconds).toBeCloseTo(picture.spanSeconds, 9);
          picture.light.forEach(({ seconds, level }, index) => {
            expect(seconds).toBeGreaterThanOrEqual(picture.light[index - 1]?.seconds ?? 0);
            expect(level).toBeGreaterThanOrEqual(0);
            expect(level).toBeLessThanOrEqual(1);
          });
        },
      ),
      { numRuns: 50 },
    );
  });

  test('the cure really cures, for any projector', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 12, max: 26 }),
        fc.integer({ min: 2, max: 5 }),
        fc.integer({ min: 10, max: 90 }),
        (filmFps, flashes, openPercent) => {
          const outcome = outcomeOf({
            filmFps: String(filmFps),
            flashesPerFrame: String(flashes),
            openPercent: String(openPercent),
            cameraFps: '24',
            exposureSeconds: '1/100',
          });
          const cure = outcome.answers['matchingExposureSeconds']?.value;
          if (cure === undefined) throw new Error('no cure');
          expect(equalBladeRipplePercent(filmFps, flashes, openPercent / 100, cure)).toBe(0);
        },
      ),
      { numRuns: 100 },
    );
  });
});
