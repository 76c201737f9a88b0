import { makeMixer } from './camera/mix.ts';
import { dividerColumn, mixStrips } from './camera/strips.ts';
import { picturePlan } from './camera/views.ts';
import { PAGE } from './drawing/reel.ts';
import type { MakeSheet } from './drawing/sheet.ts';
import { makeAnyFilmInGate } from './gate/any-film-in-gate.ts';
import { keyOf } from './gate/film-faults.ts';
import { shownOf } from './side.ts';
import { fullSide, type SceneData, type SideData } from './scene-data.ts';

/** The line between two sides, cream. */
const LINE = 0xffe8fbff;

/** Film frames that are remembered, 1.2 MB each at the largest size. */
const MOST_BITMAPS = 100;

/** Draws the stills of scenes at one size. */
export type DrawStill = (scene: SceneData) => Uint32Array<ArrayBuffer>;

/**
 * Prepares stills, for the page without scripts and for paper.
 *
 * @param width  pixels; the height is three quarters of it
 * @returns draws a scene as it starts; RGBA in a word for each pixel
 */
export function makeStills(makeSheet: MakeSheet, width: number): DrawStill {
  const height = Math.round((width * PAGE.height) / PAGE.width);
  const filmInGate = makeAnyFilmInGate(makeSheet, width);
  /** Film frames as drawn: most scenes show the same few of the same film. */
  const bitmaps = new Map<string, Uint32Array>();

  /** The whole picture of one side. */
  function sidePicture(data: SideData, starts: SceneData['starts'], out: Uint32Array): void {
    const side = fullSide(data);
    const shown = shownOf(side);
    const bitmapOf = (filmFrame: number): Uint32Array => {
      const key = keyOf(filmFrame, side.film);
      const found = bitmaps.get(key);
      if (found !== undefined) return found;
      const made = new Uint32Array(filmInGate(filmFrame, side.film).buffer);
      if (bitmaps.size >= MOST_BITMAPS) bitmaps.clear();
      bitmaps.set(key, made);
      return made;
    };
    const planOf = (picture: number) => picturePlan(shown, side.view, picture, height);
    const mixer = makeMixer(side.tone);
    if (starts === 'strips') {
      const stripPlan = (strip: number) => planOf(side.picture + strip);
      mixStrips(mixer, out, width, stripPlan, (_, filmFrame) => bitmapOf(filmFrame));
    } else {
      mixer.mix(out, width, planOf(side.picture), bitmapOf, { from: 0, to: width });
    }
  }

  function draw({ sides, starts, split = 0.5 }: SceneData): Uint32Array<ArrayBuffer> {
    const out = new Uint32Array(width * height);
    const [first, second] = sides;
    if (first === undefined) throw new Error('a scene needs a side');
    sidePicture(first, starts, out);
    if (second === undefined || split === 1) return out;
    // Two sides: in strips the divider stands at a strip's edge.
    const other = new Uint32Array(out.length);
    sidePicture(second, starts, other);
    const middle = dividerColumn(split, width, starts === 'strips');
    for (let row = 0; row < height; row += 1) {
      const [from, to] = [row * width + middle, (row + 1) * width];
      out.set(other.subarray(from, to), from);
      out.fill(LINE, from - 1, from + 1);
    }
    return out;
  }

  return draw;
}
