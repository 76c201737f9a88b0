import { makeMixer, type Bitmap, type Mixer, type PicturePart } from '../../scene/camera/mix.ts';
import { dividerColumn, STRIPS, stripColumns } from '../../scene/camera/strips.ts';
import { picturePlan, viewFps, type Shown, type View } from '../../scene/camera/views.ts';
import { fullSide, type SideData } from '../../scene/scene-data.ts';
import { shownOf, type Side } from '../../scene/side.ts';
import type { FilmSupply } from './kept-frames.ts';

/** A side ready to be painted. */
export interface Painted {
  readonly side: Side;
  readonly shown: Shown;
  readonly mixer: Mixer;
}

export function makePainted(data: SideData): Painted {
  const side = fullSide(data);
  return { side, shown: shownOf(side), mixer: makeMixer(side.tone) };
}

/** What is to be painted. */
export interface Wanted {
  readonly view: View;
  /** Time on the reel, s. */
  readonly seconds: number;
  readonly isStrips: boolean;
  /** Whether the next film frames will soon be wanted. */
  readonly isAhead: boolean;
  /** Place of the divider, share of the width. */
  readonly split: number;
  /** Share of the true swing of each side. */
  readonly contrasts: readonly number[];
}

/** Number of the picture of a view at a time. */
export function pictureAt({ shown }: Painted, view: View, seconds: number): number {
  return Math.floor(seconds * viewFps(view, shown.setting, shown.file) + 1e-6);
}

/** Paints scenes on a canvas. */
export interface Painter {
  /**
   * Paints what is wanted; where a film frame is still on its way the picture stays as it is.
   *
   * @returns whether it is painted
   */
  paint(painted: readonly Painted[], wanted: Wanted): boolean;
}

export function makePainter(canvas: HTMLCanvasElement, supply: FilmSupply): Painter {
  const { width } = supply;
  const height = (width * 3) / 4;
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('a scene without a canvas');
  const image = pen.createImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);

  /**
   * Mixes a part of a picture of a side; not while a film frame is missing, but all are asked for, and where
   * the reel runs those that come next.
   */
  function part(
    { shown: way, side: { film }, mixer }: Painted,
    { view, isAhead }: Wanted,
    picture: number,
    where: PicturePart,
    contrast: number,
  ): boolean {
    const plan = picturePlan(way, view, picture, height);
    const frames = new Map<number, Bitmap>();
    let areAllHere = true;
    for (const parts of plan) {
      for (const { filmFrame } of parts) {
        if (frames.has(filmFrame)) continue;
        const bitmap = supply.frame(filmFrame, film);
        if (bitmap === undefined) areAllHere = false;
        frames.set(filmFrame, bitmap ?? pixels);
      }
    }
    if (isAhead) {
      const last = Math.max(...frames.keys());
      for (const more of [1, 2, 3, 4]) supply.frame(last + more, film);
    }
    const frameOf = (filmFrame: number): Bitmap => frames.get(filmFrame) ?? pixels;
    if (areAllHere) mixer.mix(pixels, width, plan, frameOf, where, contrast);
    return areAllHere;
  }

  /** Columns of a side as upright strips, each of the next picture. */
  function strips(one: Painted, wanted: Wanted, first: number, from: number, to: number): boolean {
    let isDone = true;
    for (let strip = 0; strip < STRIPS; strip += 1) {
      const columns = stripColumns(strip, width);
      const isHere = columns.from >= from && columns.to <= to;
      if (isHere && !part(one, wanted, first + strip, columns, 1)) isDone = false;
    }
    return isDone;
  }

  let sides: readonly Painted[] | undefined;
  /** What stands on the canvas: a screen asks more often than a file has pictures. */
  let shown = '';
  /** What is mixed, down to which row. */
  let mixed = '';
  let rows = 0;

  /** Goes on with pictures by so many rows. */
  function mix(
    painted: readonly Painted[],
    wanted: Wanted,
    numbers: readonly number[],
    key: string,
    more: number,
  ): boolean {
    const top = key === mixed ? rows : 0;
    const bottom = Math.min(height, top + more);
    const { isStrips, contrasts } = wanted;
    const middle = dividerColumn(wanted.split, width, isStrips);
    mixed = '';
    if (top < bottom) {
      const done = painted.map((one, index) => {
        const from = index === 0 ? 0 : middle;
        const to = index === 0 && painted.length > 1 ? middle : width;
        const number = numbers[index] ?? 0;
        return isStrips
          ? strips(one, wanted, number, from, to)
          : part(one, wanted, number, { from, to, top, bottom }, contrasts[index] ?? 1);
      });
      if (!done.every(Boolean)) return false;
    }
    mixed = key;
    rows = bottom;
    return true;
  }

  return {
    paint(painted, wanted) {
      const { view, seconds, isStrips, split, contrasts } = wanted;
      const numbers = painted.map((one) => pictureAt(one, view, seconds));
      const keyOf = (pictures: readonly number[]): string =>
        [view, split, isStrips, ...contrasts, ...pictures].join();
      const due = keyOf(numbers);
      if (painted !== sides) shown = mixed = '';
      sides = painted;
      if (due === shown) {
        // Half of the next picture at a time, so that no picture of the screen waits for a whole one.
        const next = numbers.map((number) => number + 1);
        if (wanted.isAhead) mix(painted, wanted, next, keyOf(next), height / 2);
        return true;
      }
      if (!mix(painted, wanted, numbers, due, height)) return false;
      pen.putImageData(image, 0, 0);
      shown = due;
      return true;
    },
  };
}
