import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/gate/travel-ghost/worksheet.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';

function outcomeOf(entries: Entries): Outcome {
  const { outcome, messages } = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
  if (outcome === undefined) throw new Error(JSON.stringify(messages));
  return outcome;
}

describe('travel ghost', () => {
  test('is content with a blade wider than the move', () => {
    const outcome = outcomeOf({});
    expect(outcome.verdict.level).toBe('good');
    expect(outcome.verdict.sentence).toContain('6°');
  });

  test.each([
    ['late', '8', /too late.*upwards/u],
    ['early', '-8', /too early.*downwards/u],
  ])('tells a blade that comes %s by its streaks', (_, lag, sentence) => {
    const { verdict } = outcomeOf({ bladeLagDegrees: lag });
    expect(verdict.level).toBe('stop');
    expect(verdict.sentence).toMatch(sentence);
  });

  test('tells a narrow blade by streaks on both sides', () => {
    expect(outcomeOf({ bladeDegrees: '50' }).verdict.sentence).toMatch(/upwards.*downwards/u);
  });

  test('the blade that it asks for covers the move', () => {
    for (const lag of ['0', '5', '-12']) {
      const needed = outcomeOf({ bladeLagDegrees: lag }).answers['neededBladeDegrees']?.value ?? 0;
      const cured = outcomeOf({ bladeLagDegrees: lag, bladeDegrees: String(needed) });
      expect(cured.answers['coverage']?.text).toBe('covered');
      const short = outcomeOf({ bladeLagDegrees: lag, bladeDegrees: String(needed - 1) });
      expect(short.answers['coverage']?.text).not.toBe('covered');
    }
  });

  test('an even motion smears further than a soft one', () => {
    const smear = (motion: string): number =>
      outcomeOf({ motion, bladeLagDegrees: '8' }).answers['smearUpPercent']?.value ?? 0;
    expect(smear('even')).toBeGreaterThan(smear('soft'));
  });
});
