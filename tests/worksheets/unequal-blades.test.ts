import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';
import { worksheet } from '../../src/worksheets/gate/unequal-blades/worksheet.ts';

const evaluated = (entries: Entries) => evaluate(worksheet, fillEntries(worksheet.inputs, entries));

function outcomeOf(entries: Entries): Outcome {
  const { outcome, messages } = evaluated(entries);
  if (outcome === undefined) throw new Error(JSON.stringify(messages));
  return outcome;
}

describe('unequal blades', () => {
  test('a wide pulldown blade pulses with 7 Hz at 25, and one turn does not fit', () => {
    const outcome = outcomeOf({});
    expect(outcome.verdict.level).toBe('stop');
    expect(outcome.verdict.sentence).toMatch(/7 times a second.*does not fit/u);
    expect(outcome.answers['slowPulsationHz']?.value).toBeCloseTo(7, 9);
    // The widest difference of the lit time: 18° of 360° at 18 frames/s, of a mean of 1/108 s.
    expect(outcome.answers['ripplePercent']?.value).toBeCloseTo(
      (18 / 360 / 18 / (1 / 108)) * 100,
      9,
    );
  });

  test('equal blades are called equal, however they were measured', () => {
    const outcome = outcomeOf({ bladeDegrees: '31; 31; 31', openDegrees: '29; 29; 29' });
    expect(outcome.verdict.level).toBe('good');
    expect(outcome.answers['ripplePercent']?.value).toBe(0);
    expect(outcome.cautions?.[0]).toContain('180');
  });

  test('one turn always ends the ripple, and is offered when it fits', () => {
    const outcome = outcomeOf({ cameraFps: '16' });
    expect(outcome.verdict.sentence).toContain('ends it');
    expect(outcome.answers['rippleAtTurnPercent']?.value).toBe(0);
  });

  test('a shutter that turns three times in a frame repeats three times as fast', () => {
    const outcome = outcomeOf({ bladeDegrees: '180', openDegrees: '180', turnsPerFrame: '3' });
    expect(outcome.answers['flashesPerFrame']?.value).toBe(3);
    expect(outcome.answers['ripplePercent']?.value).toBe(0);
    expect(outcome.tables).toHaveLength(1);
  });

  test('asks for as many openings as blades, at the field of the openings', () => {
    expect(evaluated({ openDegrees: '60; 60' }).messages).toEqual({
      openDegrees:
        'Expected one opening before each blade, so 3 of them. An entry looks like 60; 60; 60.',
    });
  });

  test('judges an exposure time that was typed, not only one flash', () => {
    const two = outcomeOf({ exposureSeconds: '1/27' });
    expect(two.answers['ripplePercent']?.note).toContain('1/27');
    expect(two.answers['ripplePercent']?.value).toBeLessThan(30);
    const [table] = two.tables ?? [];
    expect(table?.rows[1]?.cells[2]).toBe(two.answers['ripplePercent']?.text);
    expect(Object.keys(evaluated({ exposureSeconds: '1/20' }).messages)).toEqual([
      'exposureSeconds',
    ]);
  });

  test('a wipe leaves the ripple of one flash as it is, and lessens that of a short exposure', () => {
    const ripple = (entries: Entries): number =>
      outcomeOf(entries).answers['ripplePercent']?.value ?? 0;
    expect(ripple({ edgeWipeDegrees: '5' })).toBeCloseTo(ripple({}), 9);
    const short = { exposureSeconds: '1/200' };
    expect(ripple({ ...short, edgeWipeDegrees: '40' })).toBeLessThan(ripple(short));
  });
});
