import { describe, expect, it } from 'vitest';
import type { Bitmap } from '../../src/scene/camera/mix.ts';
import { picturePlan } from '../../src/scene/camera/views.ts';
import { sideOf } from '../../src/scene/looks/looks.ts';
import { makePainted, makePainter, type Wanted } from '../../src/ui/scene/painter.ts';

// While one picture stands, the next is mixed in halves: what is shown must be what one go gives.

const WIDTH = 64;
const HEIGHT = 48;

/** A film frame of which every pixel tells the frame and the place. */
const bitmapOf = (filmFrame: number): Bitmap =>
  Uint32Array.from({ length: WIDTH * HEIGHT }, (_, at) => 0xff000000 + filmFrame * 40_503 + at * 7);

/** A painter on a canvas that keeps what is put on it; a film frame may be kept back. */
function onCanvas(isHere: (filmFrame: number) => boolean = () => true) {
  const puts: Uint8ClampedArray[] = [];
  const pen = {
    createImageData: (width: number, height: number) => ({
      data: new Uint8ClampedArray(width * height * 4),
    }),
    putImageData: ({ data }: { readonly data: Uint8ClampedArray }) => puts.push(data.slice()),
  };
  const canvas = { width: 0, height: 0, getContext: () => pen } as unknown as HTMLCanvasElement;
  const frame = (filmFrame: number): Bitmap | undefined =>
    isHere(filmFrame) ? bitmapOf(filmFrame) : undefined;
  return { puts, painter: makePainter(canvas, { width: WIDTH, frame }) };
}

const paintedAt = (exposures: readonly [number, number]) =>
  exposures.map((exposureSeconds, index) =>
    makePainted(
      sideOf({ name: '' }, { cameraFps: 25, exposureSeconds, readoutSeconds: index * 0.016 }),
    ),
  );
const FIRST = paintedAt([1 / 30, 1 / 50]);
const SECOND = paintedAt([1 / 100, 1 / 40]);

const wantedAt = (seconds: number, contrasts: readonly number[]): Wanted => ({
  view: 'camera',
  seconds,
  isStrips: false,
  isAhead: contrasts.length > 0,
  split: 0.4,
  contrasts,
});

/** What one go over all rows gives, side by side, without the painter. */
function inOneGo(painted: typeof FIRST, { view, seconds, split, contrasts }: Wanted) {
  const out = new Uint32Array(WIDTH * HEIGHT);
  painted.forEach((one, index) => {
    const plan = picturePlan(one.shown, view, Math.floor(25 * seconds), HEIGHT);
    const middle = Math.round(split * WIDTH);
    const columns = index === 0 ? { from: 0, to: middle } : { from: middle, to: WIDTH };
    one.mixer.mix(out, WIDTH, plan, bitmapOf, columns, contrasts[index]);
  });
  return new Uint8ClampedArray(out.buffer);
}

/** Pictures of the screen in which the file has twelve or thirteen. */
const TICKS = Array.from({ length: 30 }, (_, at) => 2 + at / 60);

describe('what is shown while a scene plays', () => {
  it('is what one go gives, put once for each picture of the file', () => {
    const { puts, painter } = onCanvas();
    let shown = 0;
    for (const seconds of TICKS) {
      const wanted = wantedAt(seconds, [1, 0.8]);
      expect(painter.paint(FIRST, wanted)).toBe(true);
      if (puts.length === shown) continue;
      shown = puts.length;
      expect(puts.at(-1)).toEqual(inOneGo(FIRST, wanted));
    }
    expect(shown).toBe(13);
  });

  it('stands ready before it is due: then not even its film frames are asked for', () => {
    let areKept = true;
    const { puts, painter } = onCanvas(() => areKept);
    for (const seconds of [2.001, 2.015, 2.03]) painter.paint(FIRST, wantedAt(seconds, [1, 1]));
    areKept = false;
    const due = wantedAt(2.041, [1, 1]);
    expect(painter.paint(FIRST, due)).toBe(true);
    expect(puts.at(-1)).toEqual(inOneGo(FIRST, due));
    expect(painter.paint(FIRST, wantedAt(2.121, [1, 1]))).toBe(false);
  });

  it('holds nothing of the numbers before, changed while half of a picture was mixed', () => {
    for (const ahead of [1, 2, 3]) {
      const { puts, painter } = onCanvas();
      for (let call = 0; call <= ahead; call += 1) painter.paint(FIRST, wantedAt(2.001, [1, 1]));
      const wanted = wantedAt(2.041, [1, 1]);
      painter.paint(SECOND, wanted);
      expect(puts.at(-1)).toEqual(inOneGo(SECOND, wanted));
      expect(puts.at(-1)).not.toEqual(inOneGo(FIRST, wanted));
    }
  });

  it('waits for a film frame that is late, and is whole then', () => {
    let newest = 36;
    const { puts, painter } = onCanvas((filmFrame) => filmFrame <= newest);
    const late = TICKS.filter((seconds) => !painter.paint(FIRST, wantedAt(seconds, [1, 1])));
    expect(late.length).toBeGreaterThan(10);
    newest = Infinity;
    const wanted = wantedAt(late.at(-1)!, [1, 1]);
    expect(painter.paint(FIRST, wanted)).toBe(true);
    expect(puts.at(-1)).toEqual(inOneGo(FIRST, wanted));
  });
});
