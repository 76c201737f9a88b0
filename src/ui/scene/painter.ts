import { makeMixer, type Bitmap, type Mixer } from '../../scene/camera/mix.ts';
import { filmFrameShares, type PicturePlan } from '../../scene/camera/row-plan.ts';
import { dividerColumn, STRIPS, stripColumns } from '../../scene/camera/strips.ts';
import { picturePlan, viewFps, type Shown, type View } from '../../scene/camera/views.ts';
import { fullSide, type SideData } from '../../scene/scene-data.ts';
import { shownOf, type Side } from '../../scene/side.ts';
import type { FilmSupply } from './kept-frames.ts';

/** Film frames asked for before they are needed. */
const AHEAD = 4;

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
  if (pen === null) throw new Error('this browser draws no canvas');
  const image = pen.createImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);

  /** The film frames of a plan; undefined while one is missing, but all are asked for. */
  function framesOf(plan: PicturePlan, side: Side): ReadonlyMap<number, Bitmap> | undefined {
    const frames = new Map<number, Bitmap>();
    let areAllHere = true;
    for (const parts of plan) {
      for (const { filmFrame } of parts) {
        if (frames.has(filmFrame)) continue;
        const bitmap = supply.frame(filmFrame, side.film);
        if (bitmap === undefined) areAllHere = false;
        else frames.set(filmFrame, bitmap);
      }
    }
    return areAllHere ? frames : undefined;
  }

  function askAhead(plan: PicturePlan, side: Side): void {
    const last = Math.max(...filmFrameShares(plan).map(({ filmFrame }) => filmFrame));
    if (!Number.isFinite(last)) return;
    for (let frame = last + 1; frame <= last + AHEAD; frame += 1) supply.frame(frame, side.film);
  }

  /** Columns of a side as upright strips, each of the next picture. */
  function strips(one: Painted, wanted: Wanted, from: number, to: number): boolean {
    const first = pictureAt(one, wanted.view, wanted.seconds);
    let isDone = true;
    for (let strip = 0; strip < STRIPS; strip += 1) {
      const columns = stripColumns(strip, width);
      if (columns.from < from || columns.to > to) continue;
      const plan = picturePlan(one.shown, wanted.view, first + strip, height);
      const frames = framesOf(plan, one.side);
      if (frames === undefined) isDone = false;
      else one.mixer.mix(pixels, width, plan, bitmapFrom(frames), columns);
    }
    return isDone;
  }

  function whole(
    one: Painted,
    wanted: Wanted,
    from: number,
    to: number,
    contrast: number,
  ): boolean {
    const picture = pictureAt(one, wanted.view, wanted.seconds);
    const plan = picturePlan(one.shown, wanted.view, picture, height);
    const frames = framesOf(plan, one.side);
    if (wanted.isAhead) askAhead(plan, one.side);
    if (frames === undefined) return false;
    one.mixer.mix(pixels, width, plan, bitmapFrom(frames), { from, to }, contrast);
    return true;
  }

  /** What stands on the canvas: a screen asks more often than a file has pictures. */
  let lastSides: readonly Painted[] | undefined;
  let lastAsked = '';

  return {
    paint(painted, wanted) {
      const middle = dividerColumn(wanted.split, width, wanted.isStrips);
      const { view, seconds, isStrips, contrasts } = wanted;
      const numbers = painted.map((one) => pictureAt(one, view, seconds));
      const asked = [view, middle, isStrips, ...contrasts, '', ...numbers].join();
      if (painted === lastSides && asked === lastAsked) return true;
      const done = painted.map((one, index) => {
        const from = index === 0 ? 0 : middle;
        const to = index === 0 && painted.length > 1 ? middle : width;
        return wanted.isStrips
          ? strips(one, wanted, from, to)
          : whole(one, wanted, from, to, wanted.contrasts[index] ?? 1);
      });
      const isDone = done.every(Boolean);
      if (isDone) {
        pen.putImageData(image, 0, 0);
        lastSides = painted;
        lastAsked = asked;
      }
      return isDone;
    },
  };
}

function bitmapFrom(frames: ReadonlyMap<number, Bitmap>): (filmFrame: number) => Bitmap {
  return (filmFrame) => {
    const bitmap = frames.get(filmFrame);
    if (bitmap === undefined) throw new Error(`film frame ${filmFrame} is missing`);
    return bitmap;
  };
}
