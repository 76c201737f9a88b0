import { expect, test } from 'vitest';
import { withSmallInitial } from '../../src/quantity/sentence.ts';

test('a phrase goes on within a sentence, and a gauge keeps its capital', () => {
  expect(withSmallInitial('Splices not looked at')).toBe('splices not looked at');
  expect(withSmallInitial('Super 16; no gate for it here')).toBe('Super 16; no gate for it here');
  expect(withSmallInitial('Standard 8')).toBe('Standard 8');
  expect(withSmallInitial('Superb film')).toBe('superb film');
});
