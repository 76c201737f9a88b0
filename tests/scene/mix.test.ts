import { describe, expect, it } from 'vitest';
import { makeGateLight } from '../../src/core/gate/gate-light.ts';
import { makeEqualShutter } from '../../src/core/gate/shutter.ts';
import { bandsFrame, exposureAtPhase } from '../../src/pictures/bands/phase.ts';
import { makeMixer } from '../../src/scene/camera/mix.ts';
import { cameraFramePlan, type PicturePlan } from '../../src/scene/camera/row-plan.ts';
import { makeSetting } from '../../src/scene/camera/setting.ts';
import { mixStrips, STRIPS, stripColumns } from '../../src/scene/camera/strips.ts';
import { NEUTRAL } from '../../src/scene/camera/tone.ts';
import { bandsPicture } from '../../src/worksheets/gate/gate-pictures.ts';

const grey = (code: number, pixels: number): Uint32Array =>
  new Uint32Array(pixels).fill((0xff000000 | (code << 16) | (code << 8) | code) >>> 0);

/** The transfer curve of the standard, written once more. */
const toLight = (code: number): number => {
  const v = code / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};
const toCode = (light: number): number =>
  Math.round(
    255 * (light <= 0.0031308 ? light * 12.92 : 1.055 * Math.min(1, light) ** (1 / 2.4) - 0.055),
  );

function mixOnce(plan: PicturePlan, bitmaps: ReadonlyMap<number, Uint32Array>, width: number) {
  const out = new Uint32Array(width * plan.length);
  makeMixer(NEUTRAL).mix(out, width, plan, (frame) => bitmaps.get(frame)!, { from: 0, to: width });
  return out;
}

describe('the mixer', () => {
  it('gives back a film frame in full light', () => {
    const pixels = Uint32Array.from({ length: 256 }, (_, code) => 0xff000000 + code * 0x010101);
    const out = mixOnce([[{ filmFrame: 0, weight: 1 }]], new Map([[0, pixels]]), 256);
    expect([...out]).toEqual([...pixels]);
  });

  it.each([1, 2, 3, 4])('adds the light of %d film frames', (count) => {
    const codes = [200, 90, 30, 150].slice(0, count);
    const weights = [0.5, 0.3, 0.15, 0.25].slice(0, count);
    const bitmaps = new Map(codes.map((code, frame) => [frame, grey(code, 3)]));
    const plan = [weights.map((weight, filmFrame) => ({ filmFrame, weight }))];
    const [pixel] = mixOnce(plan, bitmaps, 3);
    const light = codes.reduce((sum, code, at) => sum + toLight(code) * weights[at]!, 0);
    expect(Math.abs((pixel! & 255) - toCode(light))).toBeLessThanOrEqual(1);
    expect(pixel! >>> 24).toBe(255);
  });

  it('is white where there is more light than white, and black without any', () => {
    const bitmaps = new Map([[0, grey(250, 1)]]);
    expect(mixOnce([[{ filmFrame: 0, weight: 3 }]], bitmaps, 1)[0]! & 255).toBe(255);
    expect(mixOnce([[]], bitmaps, 1)[0]! & 255).toBe(0);
  });

  it('leaves clipped white without a drawing when it is darkened afterwards', () => {
    const bitmap = Uint32Array.of(0xffc8c8c8, 0xfff0f0f0, 0xff404040);
    const out = new Uint32Array(3);
    const mixer = makeMixer({ ...NEUTRAL, exposure: 2.5, pulledBack: 0.4 });
    mixer.mix(out, 3, [[{ filmFrame: 0, weight: 1 }]], () => bitmap, { from: 0, to: 3 });
    const [bright, brighter, dark] = [...out].map((pixel) => pixel & 255);
    expect(bright).toBe(brighter);
    expect(Math.abs(dark! - 0x40)).toBeLessThanOrEqual(1);
  });

  it.each([0, 12, 33])(
    'shows a grey gate as the picture of bands does, camera frame %d',
    (frame) => {
      const bench = {
        filmFps: 18,
        flashesPerFrame: 3,
        openFraction: 0.5,
        cameraFps: 25,
        exposureSeconds: 1 / 100,
        readoutSeconds: 0.016,
      };
      const rows = 240;
      const setting = makeSetting({ ...bench, phase: 0 });
      const light = makeGateLight(bench.filmFps, makeEqualShutter(3, 0.5));
      const bands = bandsPicture(light, 54, 25, bench.exposureSeconds, bench.readoutSeconds);
      const { phaseAtTop } = bandsFrame(bands, frame);
      const plan = cameraFramePlan(setting, frame, rows);
      const all = new Map(
        plan.flat().map(({ filmFrame }) => [filmFrame, grey(150, rows)] as const),
      );
      const out = mixOnce(plan, all, 1);
      for (let row = 0; row < rows; row += 1) {
        const expected = toCode(
          toLight(150) *
            exposureAtPhase(bands, phaseAtTop + ((row + 0.5) / rows) * bands.periodsDownPicture),
        );
        expect(Math.abs((out[row]! & 255) - expected)).toBeLessThanOrEqual(2);
      }
    },
  );
});

describe('the strips', () => {
  it('lie side by side without a gap and each show their own picture', () => {
    const width = 640;
    const out = new Uint32Array(width);
    mixStrips(
      makeMixer(NEUTRAL),
      out,
      width,
      (strip) => [[{ filmFrame: strip, weight: 1 }]],
      (_, filmFrame) => grey(10 + 15 * filmFrame, width),
    );
    for (let strip = 0; strip < STRIPS; strip += 1) {
      const { from, to } = stripColumns(strip, width);
      for (let at = from; at < to; at += 1) expect(out[at]! & 255).toBe(10 + 15 * strip);
    }
    expect(stripColumns(STRIPS - 1, width).to).toBe(width);
  });
});
