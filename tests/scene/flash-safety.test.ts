import { describe, expect, it } from 'vitest';
import { fastestSpeed, safePlay } from '../../src/scene/camera/flash-safety.ts';
import { LOOKS, sideOf, type LookId } from '../../src/scene/looks/looks.ts';
import { shownOf } from '../../src/scene/side.ts';
import { isAsked } from '../tools/sample-sizes.ts';
import { checkRandomPlay } from './random-play.ts';
import { filmStock, flashesPlayed } from './play.ts';

/** A quarter of the window may flash. */
const MOST_FLASHING = 0.25;
/** By the older working definition of a red flash, an edge of the child's jersey is left of the window. */
const MOST_FORMER_RED = 0.01;

const ids = Object.keys(LOOKS) as LookId[];
const film = filmStock(192);

/** Faults of the film alone: the light swings in none of them. One of so many is asked, by turns. */
const FILM_TURNS = 4;
const ofTheFilm = ids.filter((id) => 'film' in LOOKS[id] && !('bench' in LOOKS[id]));
const asked = ids.filter((id) => {
  const place = ofTheFilm.indexOf(id);
  return place < 0 || isAsked(place, FILM_TURNS);
});

describe('what plays', () => {
  it.each(asked)('flashes nowhere too often: %s', (id) => {
    const side = sideOf(LOOKS[id]);
    const { general, red, formerRed } = flashesPlayed(side, film(side), 192, {
      fromFilmFrame: 62,
      seconds: 1.6,
    });
    expect(general).toBeLessThan(MOST_FLASHING);
    expect(red).toBe(0);
    expect(formerRed).toBeLessThan(MOST_FORMER_RED);
  });

  it.each(['kept', 'television'] as const)('flashes nowhere too often as %s pictures', (view) => {
    for (const id of ['pulsing', 'bands-up', 'breathing'] as const) {
      const side = { ...sideOf(LOOKS[id]), view };
      const { general, red, formerRed } = flashesPlayed(side, film(side), 192, {
        fromFilmFrame: 62,
        seconds: 1.6,
      });
      expect(general, id).toBeLessThan(MOST_FLASHING);
      expect(red, id).toBe(0);
      expect(formerRed, id).toBeLessThan(MOST_FORMER_RED);
    }
  });

  it('would flash without the rule: the count sees it', () => {
    for (const id of ['pulsing', 'bands-up', 'black-bands'] as const) {
      const side = sideOf(LOOKS[id]);
      const { general } = flashesPlayed(side, film(side), 192, {
        fromFilmFrame: 62,
        seconds: 1.4,
        contrast: 1,
      });
      expect(general, id).toBeGreaterThan(MOST_FLASHING);
    }
  });

  it('is safe on random benches', () => {
    checkRandomPlay(8, 192, film);
  });
});

describe('the rule', () => {
  const pulsing = sideOf(
    { name: '' },
    { cameraFps: 25, exposureSeconds: 1 / 50, readoutSeconds: 0 },
  );
  const shown = shownOf(pulsing);

  it('counts the four beats a second of the usual mistake, and lowers them a little', () => {
    const safe = safePlay(shown, 'camera', pulsing.tone, 1);
    expect(safe.swing).toBeCloseTo(0.148, 3);
    expect(safe.contrast).toBeGreaterThan(0.7);
    expect(safe.contrast).toBeLessThan(1);
  });

  it('shows everything at a quarter of the speed, where it beats once a second', () => {
    expect(safePlay(shown, 'camera', pulsing.tone, 1 / 4).contrast).toBe(1);
  });

  it('leaves the film in the gate alone, and an even light', () => {
    expect(safePlay(shown, 'film', pulsing.tone, 1).contrast).toBe(1);
    const even = sideOf(LOOKS.sound);
    expect(safePlay(shownOf(even), 'camera', even.tone, 1)).toEqual({
      contrast: 1,
      swing: 0,
      fastSwing: 0,
    });
  });

  it('is stricter with a brighter picture', () => {
    const bright = { ...pulsing.tone, exposure: 1.5 };
    expect(safePlay(shown, 'camera', bright, 1).contrast).toBeLessThan(
      safePlay(shown, 'camera', pulsing.tone, 1).contrast,
    );
  });

  it('slows a picture that slides or shakes', () => {
    expect(fastestSpeed(sideOf(LOOKS['lost-loop']).film)).toBe(1 / 4);
    expect(fastestSpeed(sideOf(LOOKS.weave).film)).toBe(1 / 4);
    expect(fastestSpeed(sideOf(LOOKS.sound).film)).toBe(1);
  });
});
