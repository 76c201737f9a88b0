import { expect, test } from 'vitest';
import { travelGhost } from '../../src/core/gate/travel-ghost.ts';

// Page 422: with the shutter too late the light is cut off too late, and white spots move upward.
test('a shutter that is too late draws white spots out upwards', () => {
  expect(travelGhost(60, 62, 6, 0.5, 'soft').smearUpShare).toBeGreaterThan(0);
});

// Page 423: the wings must be wider than the share of the cycle that the move alone takes.
test('a wing just as wide as the move leaves no room for any error of timing', () => {
  expect(travelGhost(60, 60, 0, 0.5, 'soft').smearUpShare).toBe(0);
  expect(travelGhost(60, 60, 1, 0.5, 'soft').smearUpShare).toBeGreaterThan(0);
  expect(travelGhost(60, 63, 1, 0.5, 'soft').smearUpShare).toBe(0);
});
