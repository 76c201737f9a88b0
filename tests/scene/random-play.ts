import fc from 'fast-check';
import { expect } from 'vitest';
import { LOOKS, sideOf } from '../../src/scene/looks/looks.ts';
import type { Side } from '../../src/scene/side.ts';
import { filmStock, flashesPlayed, type Fineness } from './play.ts';
import { anyBench } from './random-benches.ts';

/** Plays random benches in a random view and counts the flashes on what is shown. */
export function checkRandomPlay(
  numRuns: number,
  width: Fineness,
  film: ReturnType<typeof filmStock> = filmStock(width),
): void {
  const sound = sideOf(LOOKS.sound);
  fc.assert(
    fc.property(
      anyBench,
      fc.constantFrom('camera' as const, 'camera' as const, 'kept' as const, 'television' as const),
      fc.integer({ min: 10, max: 80 }),
      (bench, view, fromFilmFrame) => {
        const side: Side = { ...sound, bench, view };
        const { general, red, formerRed } = flashesPlayed(side, film(side), width, {
          fromFilmFrame,
          seconds: 1.6,
        });
        expect(general).toBeLessThan(0.25);
        expect(red).toBe(0);
        expect(formerRed).toBeLessThan(0.06);
      },
    ),
    { numRuns, endOnFailure: true },
  );
}
