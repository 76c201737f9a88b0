import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { equalBladeRipplePercent } from '../../src/core/gate/ripple.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/gate/flash-match/worksheet.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';

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
    // Half open and a limit of 1 %: half a percent of 18.
    expect(text(outcome, 'speedToleranceFps')).toBe('±0.09 frames/s');
    expect(outcome.answers['speedToleranceFps']?.note).toContain('5.4');
  });

  test('has exactly the answers that chapters and other worksheets rely on', () => {
    expect(Object.keys(outcomeOf({}).answers).sort()).toEqual(
      [
        'setting',
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
    expect(outcome.verdict.sentence).toMatch(
      /25.*cannot promise whole frames\. Set the camera to 50 frames\/s and 1\/54/u,
    );
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
    expect(outcome.verdict.sentence).toContain('At this film rate no usual camera rate');
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

  test('prints one flash where it does not fit, says so, and gives no tolerance for it', () => {
    // 24 × 2 in a camera at 50 frames/s: one flash lasts 1/48 s, the camera frame 1/50 s.
    const outcome = outcomeOf({
      filmFps: '24',
      flashesPerFrame: '2',
      cameraFps: '50',
      exposureSeconds: '1/60',
    });
    expect(text(outcome, 'matchingExposureSeconds')).toBe('1/48 s');
    expect(outcome.answers['matchingExposureSeconds']?.note).toContain('does not fit');
    expect(outcome.answers['matchingExposureSeconds']?.level).toBe('stop');
    expect(text(outcome, 'speedToleranceFps')).toBe('no match to hold');
  });

  test.each([
    ['16', '2', '1/32 s'],
    ['16', '3', '1/48 s'],
    ['18', '2', '1/36 s'],
    ['18', '3', '1/54 s'],
    ['24', '2', '1/48 s'],
    ['24', '3', '1/72 s'],
    ['25', '2', '1/50 s'],
    ['25', '3', '1/75 s'],
  ])('%s frames/s with %s flashes: the match is one flash, %s', (filmFps, flashes, expected) => {
    const outcome = outcomeOf({ filmFps, flashesPerFrame: flashes });
    expect(text(outcome, 'matchingExposureSeconds')).toBe(expected);
  });

  test('labels matches of two flashes and more, and says which camera rates they ask for', () => {
    const [table] = outcomeOf({ filmFps: '24', readoutSeconds: '0' }).tables ?? [];
    const plain = table?.rows.map(({ cells }) => cells.map((cell) => cell.replaceAll(/\s/gu, ' ')));
    expect(plain?.[0]).toEqual(['1', '1/72 s', '0 %', '28.8 frames/s', '72 frames/s']);
    // Two flashes need 48 frames/s and fit only up to 36: no camera does both.
    expect(plain?.[1]).toEqual(['2', '1/36 s', '0 %', '48 frames/s', '36 frames/s']);
    expect(table?.rows[1]?.level).toBe('stop');
  });

  test('takes a wide pulldown blade and a wipe', () => {
    // 60 + 54 + 60 + 54 + 60 + 72 = 360: the shutter of the unequal blades, 30 % at one flash.
    const wide = outcomeOf({
      exposureSeconds: '1/54',
      readoutSeconds: '0',
      pulldownBladeDegrees: '72',
    });
    expect(text(wide, 'ripplePercent')).toBe('30 %');
    expect(wide.verdict.sentence).toContain('7 times a second');
    expect(text(wide, 'setting')).toBe('none is even');
    // Near a match a wipe changes nothing; far from one it takes something off.
    const soft = (exposureSeconds: string): number =>
      outcomeOf({ exposureSeconds, edgeWipeDegrees: '20' }).answers['ripplePercent']?.value ?? 0;
    expect(soft('1/50')).toBeCloseTo(14.81, 2);
    expect(soft('1/100')).toBeLessThan(160);
    // The wide blade hides more, so whole frames ask for less: 1 ÷ (55.56 + 11.11 − 18.52) ms.
    expect(text(wide, 'smallestCameraFps')).toBe('20.77 frames/s');
  });

  test('warns of strong fast flashing, and of nothing weaker or slower', () => {
    const warning = /seizure/u;
    const cautions = (entries: Entries): string => (outcomeOf(entries).cautions ?? []).join(' ');
    expect(cautions({})).toMatch(warning);
    expect(cautions({ exposureSeconds: '1/52' })).not.toMatch(warning);
    // 16 2/3 × 3 stands still at 25.
    expect(cautions({ filmFps: '16 2/3', exposureSeconds: '1/60' })).not.toMatch(warning);
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
