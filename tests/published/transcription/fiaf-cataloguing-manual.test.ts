import { expect, test } from 'vitest';
import { shrinkageClass } from '../../../src/core/reel/shrinkage-class.ts';

// D.16.6: classes 1–1.5 %, 1.5–2 % and 2–2.5 %.
test.each([
  [1, 1.49, '1–1.5 %'],
  [1.5, 1.99, '1.5–2 %'],
  [2, 2.49, '2–2.5 %'],
])('%d to %d %% is the class %s', (least, most, label) => {
  for (const percent of [least, most]) expect(shrinkageClass(percent).meaning).toContain(label);
});
