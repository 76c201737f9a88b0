import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cycleArcSeconds, travelGhost } from '../../../src/core/gate/travel-ghost.ts';

const arc = fc.double({ min: 5, max: 180, noNaN: true });
const lag = fc.double({ min: -90, max: 90, noNaN: true });
const motions = fc.constantFrom('even' as const, 'soft' as const);

describe('travel ghost', () => {
  test('there is none while the blade covers the move', () => {
    fc.assert(
      fc.property(arc, arc, lag, motions, (pulldown, blade, late, motion) => {
        const ghost = travelGhost(pulldown, blade, late, 0.5, motion);
        const margin = blade / 2 - Math.abs(late) - pulldown / 2;
        if (Math.abs(margin) < 1e-6) return;
        expect(ghost.uncoveredBeforeDegrees + ghost.uncoveredAfterDegrees === 0).toBe(margin > 0);
      }),
    );
  });

  test('a blade that comes late smears upwards, one that comes early downwards', () => {
    const late = travelGhost(60, 60, 6, 0.5, 'even');
    expect(late.smearUpShare).toBeCloseTo(0.1, 12);
    expect(late.smearDownShare).toBe(0);
    const early = travelGhost(60, 60, -6, 0.5, 'even');
    expect(early.smearDownShare).toBeCloseTo(0.1, 12);
    expect(early.smearUpShare).toBe(0);
  });

  test('agrees with a walk through the cycle in small steps', () => {
    fc.assert(
      fc.property(arc, arc, lag, motions, (pulldown, blade, late, motion) => {
        const ghost = travelGhost(pulldown, blade, late, 0.5, motion);
        const steps = 6000;
        let lit = 0;
        let up = 0;
        let down = 1;
        for (let step = 0; step < steps; step += 1) {
          const degrees = ((step + 0.5) / steps - 0.5) * pulldown;
          if (Math.abs(degrees - late) < blade / 2) continue;
          lit += pulldown / steps;
          const time = (step + 0.5) / steps;
          const travelled = motion === 'even' ? time : Math.sin((Math.PI * time) / 2) ** 2;
          // Before the blade the old frame leaves; after it the new frame arrives.
          if (degrees < late) up = Math.max(up, travelled);
          else down = Math.min(down, travelled);
        }
        expect(ghost.uncoveredBeforeDegrees + ghost.uncoveredAfterDegrees).toBeCloseTo(lit, 0);
        expect(ghost.movingLightShare).toBeCloseTo(Math.min(1, lit / 180), 2);
        expect(ghost.smearUpShare).toBeCloseTo(up, 2);
        expect(ghost.smearDownShare).toBeCloseTo(1 - down, 2);
      }),
      { numRuns: 60 },
    );
  });

  test('60° last 10.4 ms at 16 frames/s and 9.3 ms at 18', () => {
    expect(cycleArcSeconds(60, 16) * 1000).toBeCloseTo(10.4, 1);
    expect(cycleArcSeconds(60, 18) * 1000).toBeCloseTo(9.3, 1);
  });
});
