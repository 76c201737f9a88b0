import { fastestSpeed, safePlay } from '../../src/scene/camera/flash-safety.ts';
import { makeMixer } from '../../src/scene/camera/mix.ts';
import { picturePlan, viewFps } from '../../src/scene/camera/views.ts';
import { REEL } from '../../src/scene/drawing/reel.ts';
import { makeAnyFilmInGate } from '../../src/scene/gate/any-film-in-gate.ts';
import type { FilmInGate } from '../../src/scene/gate/film-faults.ts';
import { shownOf, type Side } from '../../src/scene/side.ts';
import { blockMeans, countFlashes, type Flashing } from './flash-count.ts';
import { makePaper } from './paper.ts';

/** Pixels in a row: fewer for the everyday run, where blocks are 3 pixels wide. */
export type Fineness = 192 | 320;

/** Film frames of a film, made once each: the reel is a loop. */
export function filmStock(width: Fineness): (side: Side) => (filmFrame: number) => Uint32Array {
  const filmInGate: FilmInGate = makeAnyFilmInGate(makePaper, width);
  const films = new Map<string, Map<number, Uint32Array>>();
  return (side) => {
    const film = JSON.stringify(side.film);
    const made = films.get(film) ?? new Map<number, Uint32Array>();
    films.set(film, made);
    return (filmFrame) => {
      const found = made.get(filmFrame % REEL.filmFrames);
      if (found !== undefined) return found;
      const bitmap = new Uint32Array(filmInGate(filmFrame % REEL.filmFrames, side.film).buffer);
      made.set(filmFrame % REEL.filmFrames, bitmap);
      return bitmap;
    };
  };
}

/** Flashes of a side as it plays, from a film frame on. */
export function flashesPlayed(
  side: Side,
  bitmapOf: (filmFrame: number) => Uint32Array,
  width: Fineness,
  { fromFilmFrame = 30, seconds = 3, asked = 1, contrast = -1 },
): Flashing {
  const speed = Math.min(asked, fastestSpeed(side.film));
  const shown = shownOf(side);
  const fps = viewFps(side.view, shown.setting, side.file);
  const shownContrast =
    contrast < 0 ? safePlay(shown, side.view, side.tone, speed).contrast : contrast;
  const height = (width * 3) / 4;
  const mixer = makeMixer(side.tone);
  const out = new Uint32Array(width * height);
  const first = Math.round((fromFilmFrame / side.bench.filmFps) * fps);
  // A screen shows 60 pictures in a second; those in between are never seen.
  const every = Math.max(1, Math.floor((fps * speed) / 60));
  const run = [];
  for (let picture = first; picture < first + seconds * fps * speed; picture += every) {
    const plan = picturePlan(shown, side.view, picture, height);
    mixer.mix(out, width, plan, bitmapOf, { from: 0, to: width }, shownContrast);
    run.push(blockMeans(out, width));
  }
  return countFlashes(run, (fps * speed) / every);
}
