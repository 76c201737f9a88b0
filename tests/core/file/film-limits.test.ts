// Either side of every limit by which a stretch of a film recording counts as told, or as standing.
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { BestPath } from '../../../src/core/file/best-path.ts';
import { commandRate } from '../../../src/core/file/command-rate.ts';
import type { FilmPosition } from '../../../src/core/file/film-position.ts';
import { filmStands } from '../../../src/core/file/film-stands.ts';
import { toldPieces } from '../../../src/core/file/told-pieces.ts';
import { makeEqualShutter } from '../../../src/core/gate/shutter.ts';

const pathOf = (knots: readonly number[], nats = 2, change = 9): BestPath => ({
  knotSteps: Int32Array.from(knots),
  pieceNats: new Float64Array(knots.length - 1).fill(nats),
  changeNats: new Float64Array(knots.length - 1).fill(change),
});

describe('a piece of a film recording', () => {
  const steady = pathOf([0, 0]);
  const reasonOf = (path: BestPath, lead = 5, witness: readonly number[] = [0, 0]) =>
    toldPieces(path, [steady, pathOf(witness)], Float64Array.of(lead), 40).reasons[0];

  it.each([
    ['half a nat a camera frame is enough', pathOf([0, 0], 0.5), 5, [0, 0], undefined],
    ['less tells nothing', pathOf([0, 0], 0.49), 5, [0, 0], 'nothing-to-see'],
    ['three nats beyond a still picture are enough', pathOf([0, 0], 2, 3), 5, [0, 0], undefined],
    ['less may be a still picture', pathOf([0, 0], 2, 2.99), 5, [0, 0], 'nothing-to-see'],
    ['a lead of one nat on another blade is enough', steady, 1, [0, 0], undefined],
    ['less leaves two answers', steady, 0.99, [0, 0], 'two-answers'],
    // 40 steps to a film frame: four are a tenth.
    ['a tenth of a film frame between witnesses is agreement', steady, 5, [4, 4], undefined],
    ['more is none', steady, 5, [5, 4], 'witnesses-differ'],
    [
      'a whole film frame from start to end is none, though both ends agree',
      steady,
      5,
      [0, 40],
      'witnesses-differ',
    ],
    ['a whole film frame ahead at both ends is agreement', steady, 5, [40, 40], undefined],
  ] as const)('%s', (_, path, lead, witness, reason) => {
    expect(reasonOf(path, lead, witness)).toBe(reason);
  });

  it('beside four that tell nothing is not believed, beside three it is', () => {
    const reasonsOf = (quiet: number) => {
      const knots = new Array<number>(8).fill(0);
      const path = pathOf(knots);
      path.pieceNats.fill(0.1, 2, 2 + quiet);
      return toldPieces(path, [pathOf(knots), pathOf(knots)], new Float64Array(7).fill(9), 40)
        .reasons;
    };
    const quiet = 'nothing-to-see';
    expect(reasonsOf(3)).toEqual([undefined, undefined, quiet, quiet, quiet, undefined, undefined]);
    expect(reasonsOf(4)).toEqual([undefined, quiet, quiet, quiet, quiet, quiet, quiet]);
  });
});

describe('film that stands', () => {
  const cameraFps = 25;
  const shutter = makeEqualShutter(3, 0.5);
  const bench = (exposureSeconds: number) => ({
    filmFps: 18,
    shutter,
    exposureSeconds,
    readoutSeconds: 0.01,
  });
  /** A recording of four seconds in which some camera frames hardly change. */
  const position = (from: number, frames: number, nats: number, filmFps = 18): FilmPosition =>
    ({
      filmFps,
      slots: { cameraFps },
      slotChangeNats: Array.from({ length: 100 }, (_, slot) =>
        slot >= from && slot < from + frames ? nats : 40,
      ),
    }) as unknown as FilmPosition;

  it.each([
    // Half a second at 25 frames/s is 12.5 camera frames, 13 in whole ones, less a window of 7.
    ['six quiet camera frames are a stand', 6, 5.9, 1 / 50, 18, 1],
    ['five are not', 5, 5.9, 1 / 50, 18, 0],
    ['change of six nats is change', 6, 6, 1 / 50, 18, 0],
    // A dark of a sixth of a film frame of 18 a second lasts 9.26 ms.
    ['an exposure hardly longer than the dark needs two seconds', 6, 3, 1 / 104, 18, 0],
    ['and there a stand is less than four nats', 43, 3.9, 1 / 104, 18, 1],
    ['for 43 camera frames, two seconds less the window', 42, 3.9, 1 / 104, 18, 0],
    ['and no more than four nats', 43, 4, 1 / 104, 18, 0],
    ['with an exposure much shorter than the dark nothing is told', 43, 1, 1 / 190, 18, 0],
    ['nor with hardly more camera frames than film frames', 10, 1, 1 / 50, 21.3, 0],
    ['up to 85 film frames for 100 camera frames it is', 10, 1, 1 / 50, 21.2, 1],
  ] as const)('%s', (_, frames, nats, exposureSeconds, filmFps, count) => {
    expect(filmStands(position(28, frames, nats, filmFps), bench(exposureSeconds))).toHaveLength(
      count,
    );
  });

  it('reaches three camera frames beyond the quiet row, and not before the first', () => {
    expect(filmStands(position(28, 10, 1), bench(1 / 50))).toEqual([{ fromSlot: 25, toSlot: 40 }]);
    expect(filmStands(position(1, 10, 1), bench(1 / 50))[0]?.fromSlot).toBe(0);
  });
});

describe('a rate in a command', () => {
  it('keeps denominators up to ten thousand, and no longer ones', () => {
    expect(commandRate('rate', new Fraction(249_999, 10_000)).rate).toBe('249999/10000');
    expect(Number(commandRate('rate', new Fraction(250_003, 10_001)).bottom)).toBeLessThan(10_001);
  });
});
