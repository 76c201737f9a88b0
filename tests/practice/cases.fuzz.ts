import { expect, it } from 'vitest';
import { readCaseKinds } from '../content/read-content.ts';
import { checkCase, checkSafety, drawnCases } from './case-checks.ts';

const kinds = readCaseKinds();

it.each(kinds)('a thousand seeds of $id, on each level', (kind) => {
  const right = new Set<string>();
  let count = 0;
  for (const each of drawnCases(kind, 1000)) {
    checkCase(each);
    checkSafety(each);
    right.add(each.choices.find(({ isRight }) => isRight)?.text ?? '');
    count += 1;
  }
  expect(count).toBe(3000);
  // Every choice is right at some time, except those that are there to be refused.
  const never = (kind.choices ?? [])
    .filter(({ text, when }) => when.length > 0 && !right.has(text))
    .map(({ text }) => text);
  expect(never).toEqual([]);
});
