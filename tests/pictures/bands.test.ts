import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/bands.tsx';
import {
  flashesPerSecond,
  movingTone,
  shownLuminance,
  stillTone,
  veilOpacity,
} from '../../src/pictures/bands/flash-safety.ts';
import { bandsFrame, exposureAtPhase, frameAfter } from '../../src/pictures/bands/phase.ts';
import { cornerIndexes } from '../../src/pictures/bands/corners.ts';
import { RecordedFrame } from '../../src/pictures/bands/recorded-frame.tsx';
import type { BandsData } from '../../src/worksheets/machine/picture-data.ts';
import { h } from 'preact';
import renderToString from 'preact-render-to-string';
import { draw, markup } from './draw.ts';
import { bands } from './samples.ts';

/** Exposure of a row of a recorded frame, mean 1; height 0 at the top and 1 at the bottom of the picture. */
function rowExposure(picture: BandsData, frameNumber: number, height: number): number {
  const { phaseAtTop } = bandsFrame(picture, frameNumber);
  return exposureAtPhase(picture, phaseAtTop + height * picture.periodsDownPicture);
}

/** Distance between two phases on the circle. */
function apart(first: number, second: number): number {
  const distance = (((first - second) % 1) + 1) % 1;
  return Math.min(distance, 1 - distance);
}

const anyBands: fc.Arbitrary<BandsData> = fc.record({
  name: fc.constant('bands' as const),
  alternative: fc.constant('bands'),
  exposureByPhase: fc.array(fc.double({ min: 0, max: 5, noNaN: true }), {
    minLength: 2,
    maxLength: 64,
  }),
  periodsDownPicture: fc.double({ min: 0, max: 30, noNaN: true }),
  phaseStepPerFrame: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  cameraFps: fc.constantFrom(8, 24, 25, 30, 50, 60, 120),
});

describe('the corners of a drawn line', () => {
  test('are few for a pattern of straight pieces', () => {
    const trapezium = [0, 0, 0, 1, 2, 3, 3, 3, 2, 1, 0];
    expect(cornerIndexes(trapezium, 1e-9)).toEqual([0, 2, 5, 7, 10]);
  });

  test('leave a line that is nowhere farther from the values than the tolerance', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: 2, maxLength: 80 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (values, tolerance) => {
          const corners = cornerIndexes(values, tolerance);
          expect([corners[0], corners.at(-1)]).toEqual([0, values.length - 1]);
          values.forEach((value, index) => {
            const after = corners.findIndex((corner) => corner >= index);
            const to = corners[after] ?? 0;
            const from = corners[Math.max(0, after - 1)] ?? 0;
            const share = to === from ? 0 : (index - from) / (to - from);
            const line = (values[from] ?? 0) * (1 - share) + (values[to] ?? 0) * share;
            expect(Math.abs(line - value)).toBeLessThanOrEqual(tolerance + 1e-9);
          });
        },
      ),
    );
  });
});

describe('the recorded frame', () => {
  test('moves on by the phase step with each camera frame', () => {
    fc.assert(
      fc.property(anyBands, fc.integer({ min: 0, max: 100_000 }), (picture, frame) => {
        const now = bandsFrame(picture, frame).phaseAtTop;
        const next = bandsFrame(picture, frame + 1).phaseAtTop;
        expect(now).toBeGreaterThanOrEqual(0);
        expect(now).toBeLessThan(1);
        expect(apart(next, now + picture.phaseStepPerFrame)).toBeLessThan(1e-9);
      }),
    );
  });

  test('shows in a higher row of the next frame what a row of this frame shows', () => {
    const shift = bands.phaseStepPerFrame / bands.periodsDownPicture;
    for (const height of [0.3, 0.5, 0.9]) {
      expect(rowExposure(bands, 8, height - shift)).toBeCloseTo(rowExposure(bands, 7, height), 9);
    }
  });

  test('is the same for every row under a global shutter', () => {
    const picture = { ...bands, periodsDownPicture: 0 };
    expect(rowExposure(picture, 3, 0)).toBe(rowExposure(picture, 3, 1));
  });

  test('comes back after one beat', () => {
    // 0.16 of a period for each frame: 25 frames are exactly four periods.
    for (const height of [0, 0.4, 1]) {
      expect(rowExposure(bands, 25, height)).toBeCloseTo(rowExposure(bands, 0, height), 9);
    }
  });

  test('takes exposures from the given steps and straight lines between them', () => {
    const picture = { ...bands, exposureByPhase: [0, 1, 2, 1] };
    expect(exposureAtPhase(picture, 0.25)).toBe(1);
    expect(exposureAtPhase(picture, 0.375)).toBe(1.5);
    expect(exposureAtPhase(picture, 0.875)).toBe(0.5);
    expect(exposureAtPhase(picture, -0.25)).toBe(1);
  });
});

describe('the clock', () => {
  test('shows camera frames at the camera rate, or at a quarter of it', () => {
    expect(frameAfter(2, 25, 1)).toBe(50);
    expect(frameAfter(2, 25, 1 / 4)).toBe(12);
    expect(frameAfter(0, 25, 1)).toBe(0);
  });
});

describe('flash safety', () => {
  /** Rows of a picture as shown over one second, flashes counted frame by frame. */
  function countedFlashes(picture: BandsData, speed: number, height: number): number {
    const tone = movingTone(picture, speed);
    const shownFrames = Math.max(2, Math.round(picture.cameraFps * speed * 10));
    let flashes = 0;
    let isBright = false;
    let extreme: number | undefined;
    for (let frame = 0; frame <= shownFrames; frame += 1) {
      const level = shownLuminance(tone, rowExposure(picture, frame, height));
      extreme ??= level;
      if (!isBright && level - extreme >= 0.1) {
        isBright = true;
        extreme = level;
      } else if (isBright && extreme - level >= 0.1) {
        isBright = false;
        flashes += 1;
        extreme = level;
      } else if (isBright ? level > extreme : level < extreme) {
        extreme = level;
      }
    }
    return flashes / 10;
  }

  test('never lets a row flash more than three times a second, at either speed', () => {
    fc.assert(
      fc.property(anyBands, fc.constantFrom(1, 1 / 4), (picture, speed) => {
        // Ten seconds are counted, so a stretch cut at its ends may count one flash more.
        expect(countedFlashes(picture, speed, 0.5)).toBeLessThanOrEqual(3.1);
      }),
    );
  });

  test('counts one flash for each period of a plain pattern', () => {
    expect(flashesPerSecond(bands, 1)).toBeCloseTo(4, 9);
    expect(flashesPerSecond(bands, 1 / 4)).toBeCloseTo(1, 9);
  });

  test('counts every pulse of an uneven pattern', () => {
    const picture = { ...bands, exposureByPhase: [0.2, 1.8, 0.2, 1.8, 0.2, 1.8] };
    expect(flashesPerSecond(picture, 1)).toBeCloseTo(12, 9);
  });

  test('lowers the contrast of a 4 Hz beat at true speed and keeps it whole at a quarter', () => {
    const fast = movingTone(bands, 1);
    const swing = shownLuminance(fast, 1.8) - shownLuminance(fast, 0.2);
    expect(swing).toBeGreaterThan(0.05);
    expect(swing).toBeLessThan(0.1);
    expect(movingTone(bands, 1 / 4)).toEqual(stillTone(bands));
  });

  test('leaves weak bands alone', () => {
    const weak = { ...bands, exposureByPhase: [0.95, 1.05] };
    expect(movingTone(weak, 1).contrast).toBe(1);
  });

  test('lowers the contrast of fine stripes however slowly they move', () => {
    const stripes = { ...bands, periodsDownPicture: 9, phaseStepPerFrame: 0.001 };
    expect(movingTone(stripes, 1).contrast).toBeLessThan(1);
  });

  test('keeps the lightest row of the still picture below clipping', () => {
    fc.assert(
      fc.property(anyBands, (picture) => {
        const { meanLuminance } = stillTone(picture);
        expect(meanLuminance * Math.max(...picture.exposureByPhase)).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });

  test('draws white without a veil, black behind a full one', () => {
    expect(veilOpacity(1)).toBeCloseTo(0, 9);
    expect(veilOpacity(0)).toBe(1);
    // sRGB: a luminance of 0.2140 is printed for the middle code value.
    expect(veilOpacity(0.214)).toBeCloseTo(0.5, 3);
  });
});

describe('the drawing', () => {
  const frame = (frameNumber: number): string =>
    renderToString(
      h(
        'svg',
        null,
        h(RecordedFrame, { picture: bands, frameNumber, tone: stillTone(bands), instance: 'a' }),
      ),
    );

  function shiftOf(svg: string): number {
    const match = /gradientTransform="translate\(0 (-?[\d.]+)\)"/u.exec(svg);
    return Number(match?.[1]);
  }

  test('shifts the pattern up by the phase step times the period', () => {
    const period = 294 / bands.periodsDownPicture;
    expect(shiftOf(frame(0))).toBe(0);
    expect(shiftOf(frame(1))).toBeCloseTo(-0.16 * period, 1);
    expect(shiftOf(frame(7))).toBeCloseTo(-0.12 * period, 1);
  });

  test('is the same for the same frame number', () => {
    expect(frame(5)).toBe(frame(5));
    expect(frame(5)).not.toBe(frame(6));
  });

  test('starts still, with buttons that can be pressed before the page is live', () => {
    const root = draw(Picture, bands);
    const buttons = root.querySelectorAll('button');
    expect(buttons.map((button) => button.textContent)).toEqual([
      'Play / pause',
      '¼ speed',
      'Next frame',
    ]);
    for (const button of buttons) {
      expect(button.getAttribute('type')).toBe('button');
      // The press that wakes the form is carried out afterwards; a disabled button could not be pressed.
      expect(button.hasAttribute('disabled')).toBe(false);
    }
    expect(buttons[0]?.getAttribute('aria-pressed')).toBe('false');
    expect(root.querySelector('.pic-state')?.textContent).toBe(
      'Camera frame 1. Still, at full contrast.',
    );
  });

  test('puts the warning before the buttons and ties it to the play button', () => {
    const root = draw(Picture, bands);
    const html = root.outerHTML;
    const play = root.querySelector('button');
    const warning = root.querySelector('.pic-warning');
    expect(play?.getAttribute('aria-describedby')).toBe(warning?.id);
    expect(html.indexOf('pic-warning')).toBeLessThan(html.indexOf('<button'));
  });

  test('draws a flat picture for a global shutter', () => {
    const svg = markup(Picture, { ...bands, periodsDownPicture: 0 });
    expect(svg).not.toContain('linearGradient');
    expect(svg).toContain('fill-opacity');
  });

  test('says when nothing moves', () => {
    const root = draw(Picture, { ...bands, phaseStepPerFrame: 0 });
    expect(root.querySelector('.pic-state')?.textContent).toContain('nothing moves');
  });
});
