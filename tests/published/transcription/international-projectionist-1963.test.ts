import { expect, test } from 'vitest';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  shrinkageClass,
} from '../../../src/core/reel/shrinkage-class.ts';

// Two 35 mm theatre intermittent sprockets accept shrinkages up to 0.96 % and 0.75 %.
test('the limit for claws lies between the two published limits of sprockets', () => {
  expect(CLAW_LIMIT_SHRINKAGE_PERCENT).toBeGreaterThan(0.75);
  expect(CLAW_LIMIT_SHRINKAGE_PERCENT).toBeLessThan(0.96);
});

test('what the better sprocket accepts is past the limit here', () => {
  expect(shrinkageClass(0.96).id).toBe('at-limit');
  expect(shrinkageClass(0.75).id).toBe('slight');
});
