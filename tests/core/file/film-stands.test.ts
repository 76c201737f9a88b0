// Film that stands, found in changes written down by hand: what a stand is, and what is none.
import { describe, expect, it } from 'vitest';
import type { FilmPosition } from '../../../src/core/file/film-position.ts';
import { filmStands, shortestStandSeconds } from '../../../src/core/file/film-stands.ts';
import type { RecordingBench } from '../../../src/core/file/recording-bench.ts';
import { makeEqualShutter } from '../../../src/core/gate/shutter.ts';

const CAMERA_FPS = 50;
const FILM_FPS = 18;
/** Three blades alike, half open: each dark for a sixth of a film frame. */
const shutter = makeEqualShutter(3, 0.5);
const DARK_SECONDS = 1 / 6 / FILM_FPS;

const benchWith = (exposureSeconds: number): RecordingBench => ({
  filmFps: FILM_FPS,
  shutter,
  exposureSeconds,
  readoutSeconds: 0,
});
const USUAL = benchWith(1 / 54);

function positionOf(changes: readonly (number | undefined)[], filmFps = FILM_FPS): FilmPosition {
  return {
    kind: 'position',
    filmFps,
    slots: {
      cameraFps: CAMERA_FPS,
      slotOfFrame: Int32Array.from(changes, (_, slot) => slot),
      slots: changes.length,
      worstMissFrames: 0,
      firstSeconds: 0,
    },
    readoutSeconds: 0,
    knotSlots: new Int32Array(),
    knotPositions: new Float64Array(),
    knotErrors: new Float64Array(),
    slotChangeNats: changes,
    pieceReasons: [],
  };
}

/** Three seconds of running film, then what is given, then three more. */
const between = (
  inside: readonly (number | undefined)[],
  running = 100,
): readonly (number | undefined)[] => {
  const beside = Array.from({ length: 150 }, () => running);
  return [...beside, ...inside, ...beside];
};
const still = (frames: number): number[] => Array.from({ length: frames }, () => 0);

describe('film that stands', () => {
  it('is told from half a second on, with the windows that reach out of it', () => {
    const [stand] = filmStands(positionOf(between(still(18))), USUAL);
    expect(stand).toEqual({ fromSlot: 147, toSlot: 170 });
    expect(filmStands(positionOf(between(still(17))), USUAL)).toEqual([]);
  });

  it('goes on through flicker that is little beside running film', () => {
    const flickering = still(30).map((_, at) => (at % 5 === 2 ? 20 : -3));
    expect(filmStands(positionOf(between(flickering)), USUAL)).toEqual([
      { fromSlot: 147, toSlot: 182 },
    ]);
    // The same changes beside film that changes little are no flicker but film.
    expect(filmStands(positionOf(between(flickering, 40)), USUAL)).toEqual([]);
  });

  it('is none where too many camera frames change a little, or one changes much', () => {
    const restless = still(30).map((_, at) => (at % 5 < 2 ? 20 : 0));
    expect(filmStands(positionOf(between(restless)), USUAL)).toEqual([]);
    const moved = still(30).map((_, at) => (at === 15 ? 30 : 0));
    expect(filmStands(positionOf(between(moved)), USUAL)).toEqual([]);
    const unheard = still(30).map((_, at) => (at === 15 ? undefined : 0));
    expect(filmStands(positionOf(between(unheard)), USUAL)).toEqual([]);
  });

  it('is none where the film beside it hardly changes either', () => {
    expect(filmStands(positionOf(between(still(60), 17)), USUAL)).toEqual([]);
    expect(filmStands(positionOf(between(still(60), 19)), USUAL)).toHaveLength(1);
  });

  it('is told from two seconds on where the exposure is hardly longer than a blade’s dark', () => {
    const short = benchWith(1.04 * DARK_SECONDS);
    expect(shortestStandSeconds(positionOf([]), USUAL)).toBe(0.5);
    expect(shortestStandSeconds(positionOf([]), short)).toBe(2);
    expect(shortestStandSeconds(positionOf([]), benchWith(1.06 * DARK_SECONDS))).toBe(0.5);
    expect(filmStands(positionOf(between(still(60))), short)).toEqual([]);
    expect(filmStands(positionOf(between(still(93))), short)).toHaveLength(1);
  });

  it('is not told at all with a shorter exposure, or with hardly more camera frames', () => {
    const shorter = benchWith(0.59 * DARK_SECONDS);
    expect(shortestStandSeconds(positionOf([]), shorter)).toBeUndefined();
    expect(filmStands(positionOf(between(still(200))), shorter)).toEqual([]);
    expect(shortestStandSeconds(positionOf([], 0.86 * CAMERA_FPS), USUAL)).toBeUndefined();
    expect(shortestStandSeconds(positionOf([], 0.84 * CAMERA_FPS), USUAL)).toBe(0.5);
  });
});
