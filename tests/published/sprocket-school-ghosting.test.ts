import { expect, test } from 'vitest';
import { travelGhost } from '../../src/core/gate/travel-ghost.ts';

test('a ghost above the image: the shutter closes late; below it: early', () => {
  const late = travelGhost(60, 60, 5, 0.5, 'soft');
  expect(late.smearUpShare).toBeGreaterThan(0);
  expect(late.smearDownShare).toBe(0);
  const early = travelGhost(60, 60, -5, 0.5, 'soft');
  expect(early.smearDownShare).toBeGreaterThan(0);
  expect(early.smearUpShare).toBe(0);
});
