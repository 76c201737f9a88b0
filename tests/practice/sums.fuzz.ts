import { expect, it } from 'vitest';
import { readPractice } from '../content/read-content.ts';
import { checkSums } from './sums.ts';

it.each(readPractice())('a thousand seeds of the sum $id', (kind) => {
  const named = checkSums(kind, 1000);
  expect(named.size).toBeGreaterThanOrEqual(2);
  expect(named.has('')).toBe(false);
});
