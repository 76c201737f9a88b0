import type { FilmFaults, FilmInGate } from './film-faults.ts';
import { travelSmear } from './travel-smear.ts';

/**
 * Film frames with light on moving film. A smear needs the neighbours as well: frames asked for in order
 * are developed once.
 *
 * @param developed  gives a film frame before the plate and the lamp
 * @param width      pixels in a row
 * @param height     rows
 */
export function makeSmeared(developed: FilmInGate, width: number, height: number): FilmInGate {
  const bare = new Map<number, Uint8ClampedArray<ArrayBuffer>>();
  let bareFaults = '';
  function bareFrame(filmFrame: number, faults: FilmFaults): Uint8ClampedArray<ArrayBuffer> {
    const found = bare.get(filmFrame) ?? developed(filmFrame, faults);
    bare.set(filmFrame, found);
    return found;
  }
  return (filmFrame, faults) => {
    const asked = JSON.stringify(faults);
    if (bareFaults !== asked) bare.clear();
    bareFaults = asked;
    for (const frame of bare.keys()) {
      if (Math.abs(frame - filmFrame) > 1) bare.delete(frame);
    }
    const before = bareFrame(filmFrame - 1, faults);
    const after = bareFrame(filmFrame + 1, faults);
    return travelSmear([before, bareFrame(filmFrame, faults), after], width, height, faults);
  };
}
