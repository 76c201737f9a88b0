// Turning against a picture turned sample by sample.
import { describe, expect, it } from 'vitest';
import { codedTurn, keptArea } from '../../src/clip/watch/watch-copy.ts';
import { sourcePlanes, writeTurnedPicture } from '../../src/clip/watch/turned-planes.ts';

const WIDTH = 8;
const HEIGHT = 6;

/** Luma, then both chroma planes, each sample by a function of its place. */
const lumaAt = (x: number, y: number): number => 10 + 7 * x + 31 * y;
const blueAt = (x: number, y: number): number => 40 + 11 * x + 3 * y;
const redAt = (x: number, y: number): number => 200 - 5 * x - 13 * y;

type PlaneOf = (x: number, y: number) => number;

/** Bytes of a picture in one of the decoder’s layouts, with gaps between rows. */
function picture(format: string): {
  bytes: Uint8Array;
  layout: { offset: number; stride: number }[];
} {
  const isTen = format.endsWith('P10');
  const fineX = /^I4(?:44)/u.test(format);
  const fineY = /^I4(?:22|44)/u.test(format);
  const unit = isTen ? 2 : 1;
  const bytes = new Uint8Array(2000);
  const view = new DataView(bytes.buffer);
  let at = 16;
  const layout: { offset: number; stride: number }[] = [];
  const put = (planes: readonly PlaneOf[], width: number, height: number): void => {
    const stride = (width * planes.length + 6) * unit;
    layout.push({ offset: at, stride });
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        planes.forEach((plane, which) => {
          const place = at + y * stride + (x * planes.length + which) * unit;
          if (isTen) view.setUint16(place, plane(x, y) * 4 + 1, true);
          else bytes[place] = plane(x, y);
        });
      }
    }
    at += stride * height;
  };
  put([lumaAt], WIDTH, HEIGHT);
  const chromaWidth = fineX ? WIDTH : WIDTH / 2;
  const chromaHeight = fineY ? HEIGHT : HEIGHT / 2;
  // Finer chroma repeats each sample, so that its mean is known.
  const repeated =
    (plane: PlaneOf): PlaneOf =>
    (x, y) =>
      plane(fineX ? x >> 1 : x, fineY ? y >> 1 : y);
  if (format === 'NV12') put([blueAt, redAt], chromaWidth, chromaHeight);
  else {
    put([repeated(blueAt)], chromaWidth, chromaHeight);
    put([repeated(redAt)], chromaWidth, chromaHeight);
  }
  return { bytes, layout };
}

describe('decoded pictures as 4:2:0 of 8 bits', () => {
  const turns = [false, true].flatMap((isUpsideDown) =>
    [false, true].map((isLeftRightChanged) => ({ isUpsideDown, isLeftRightChanged })),
  );
  const cases = ['I420', 'NV12', 'I422', 'I444', 'I420P10', 'I422P10'].flatMap((format) =>
    turns.map((turn) => ({ format, ...turn })),
  );
  it.each(cases)(
    'are right from $format, upside down $isUpsideDown, left and right changed $isLeftRightChanged',
    ({ format, ...turn }) => {
      const { bytes, layout } = picture(format);
      const into = new Uint8Array((WIDTH * HEIGHT * 3) / 2);
      const planes = sourcePlanes(bytes, layout, format, WIDTH, HEIGHT);
      writeTurnedPicture(planes!, turn, into, WIDTH, HEIGHT);
      const expected: number[] = [];
      for (const [plane, width, height] of [
        [lumaAt, WIDTH, HEIGHT],
        [blueAt, WIDTH / 2, HEIGHT / 2],
        [redAt, WIDTH / 2, HEIGHT / 2],
      ] as const) {
        for (let y = 0; y < height; y += 1) {
          for (let x = 0; x < width; x += 1) {
            expected.push(
              plane(
                turn.isLeftRightChanged ? width - 1 - x : x,
                turn.isUpsideDown ? height - 1 - y : y,
              ),
            );
          }
        }
      }
      expect([...into]).toEqual(expected);
    },
  );

  it('are not made from layouts without planes', () => {
    expect(sourcePlanes(new Uint8Array(64), [], 'BGRX', 4, 4)).toBeUndefined();
    expect(sourcePlanes(new Uint8Array(64), [], null, 4, 4)).toBeUndefined();
  });
});

describe('the part of a picture that is kept', () => {
  const settings = (left: number, top: number, width: number, height: number) => ({
    privateName: 'film',
    turn: turnsNone,
    bitsPerSecond: 1,
    crop: { left, top, width, height },
  });
  const turnsNone = { isUpsideDown: false, isLeftRightChanged: false };

  it('lies on even columns and rows inside the picture', () => {
    expect(keptArea(settings(33, 11, 241, 201), 320, 240)).toEqual({
      x: 32,
      y: 10,
      width: 240,
      height: 200,
    });
    expect(keptArea(settings(-5, -5, 9000, 9000), 319, 239)).toEqual({
      x: 0,
      y: 0,
      width: 318,
      height: 238,
    });
    expect(keptArea(settings(9000, 9000, 1, 1), 320, 240)).toEqual({
      x: 318,
      y: 238,
      width: 2,
      height: 2,
    });
    const whole = { privateName: 'film', turn: turnsNone, bitsPerSecond: 1 };
    expect(keptArea(whole, 320, 240)).toEqual({ x: 0, y: 0, width: 320, height: 240 });
  });

  it('is turned as coded: a recording shown on its side changes top and sides', () => {
    const heads = { isUpsideDown: true, isLeftRightChanged: false };
    expect(codedTurn(heads, 0)).toEqual(heads);
    expect(codedTurn(heads, 180)).toEqual(heads);
    expect(codedTurn(heads, 90)).toEqual({ isUpsideDown: false, isLeftRightChanged: true });
  });
});
