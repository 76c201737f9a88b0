import { expect, test } from 'vitest';
import { AUTOCATALYTIC_ACIDITY, ACID_LEVELS } from '../../../src/core/reel/acid-level.ts';

// Onset of vinegar syndrome: 0.5 mL of 0.1 N alkali per gram, corresponding to level 1.5.
test('the onset is a free acidity of 0.5 at level 1.5', () => {
  expect(AUTOCATALYTIC_ACIDITY).toBe(0.5);
  const onset = ACID_LEVELS.find(({ note }) => note?.includes(String(AUTOCATALYTIC_ACIDITY)));
  expect(onset?.level).toBe(1.5);
});
