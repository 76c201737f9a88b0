import type { MakeSheet } from '../../scene/drawing/sheet.ts';
import { makeAnyFilmInGate } from '../../scene/gate/any-film-in-gate.ts';
import { keyOf } from '../../scene/gate/film-faults.ts';
import { keptFrames, type FilmSupply } from './kept-frames.ts';

/** Half the full size: the page itself must not wait for a film frame. */
const WIDTH = 320;

const makeSheet: MakeSheet = (width, height, willReadFrequently) => {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d', { willReadFrequently });
  if (pen === null) throw new Error('this browser draws no canvas');
  return { width, height, pen, image: canvas };
};

/** Film frames drawn on the page itself, where no worker can draw them. */
export function supplyOnPage(): FilmSupply {
  const filmInGate = makeAnyFilmInGate(makeSheet, WIDTH);
  const kept = keptFrames();
  return {
    width: WIDTH,
    frame(filmFrame, faults) {
      const key = keyOf(filmFrame, faults);
      const draw = () => new Uint32Array(filmInGate(filmFrame, faults).buffer);
      return kept.find(key) ?? kept.put(key, draw());
    },
  };
}
