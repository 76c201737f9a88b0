import type { ComponentType } from 'preact';
import type { HTMLElement } from 'node-html-parser';
import { describe, expect, test } from 'vitest';
import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { PictureData } from '../../src/worksheets/machine/picture-data.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { draw, numberOf, texts } from './draw.ts';
import { pathBoxes } from './path-boxes.ts';

// From what a reader types to what stands on the page: every length, angle and number is read back from the
// drawing and compared with the entries, by arithmetic that is written here.

const makers = import.meta.glob<{ readonly Picture: ComponentType<never> }>(
  '../../src/pictures/*.tsx',
  { eager: true },
);

const asked = new Set<string>();

/** The picture of that name that a worksheet gives for these entries, as it stands on the page. */
function drawn(worksheet: string, entries: Entries, name: PictureData['name']): HTMLElement {
  asked.add(name);
  const { outcome, messages } = evaluate(findWorksheet(worksheet), entries);
  const data = outcome?.pictures?.find((picture) => picture.name === name);
  if (data === undefined) throw new Error(`no ${name}: ${JSON.stringify(messages)}`);
  const { Picture } = makers[`../../src/pictures/${name}.tsx`]!;
  return draw(Picture as ComponentType<{ picture: PictureData; instance: string }>, data);
}

interface Point {
  readonly x: number;
  readonly y: number;
}

const pointsOf = (path: HTMLElement | null): readonly Point[] =>
  [...(path?.getAttribute('d') ?? '').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(([, x, y]) => ({
    x: Number(x),
    y: Number(y),
  }));

/** A scale read off two of its printed numbers: from a place on the page to what it means. */
function scaleOf(
  root: HTMLElement,
  axis: 'x' | 'y',
  isOnAxis: (text: HTMLElement) => boolean,
): (place: number) => number {
  const ticks = root
    .querySelectorAll('text.pic-text')
    .filter((text) => isOnAxis(text) && /^[\d.]+$/u.test(text.textContent))
    .map((text) => ({ place: numberOf(text, axis), value: Number(text.textContent) }));
  // The first and the last number may be pushed inwards, to stay on the page.
  const [one, two] = ticks.length > 3 ? ticks.slice(1) : ticks.slice(-2);
  if (one === undefined || two === undefined) throw new Error('an axis without two numbers');
  const perPlace = (two.value - one.value) / (two.place - one.place);
  return (place) => one.value + (place - one.place) * perPlace;
}

const atBottom =
  (y: number) =>
  (text: HTMLElement): boolean =>
    numberOf(text, 'y') === y;
const atLeft = (text: HTMLElement): boolean =>
  text.getAttribute('text-anchor') === 'end' && numberOf(text, 'x') < 100;

describe('gate light', () => {
  interface Bench {
    readonly filmFps: number;
    readonly flashesPerFrame: number;
    readonly openPercent: number;
    readonly cameraFps: number;
    readonly exposureMilliseconds: number;
    readonly pulldownBladeDegrees?: number;
  }
  const benches: readonly Bench[] = [
    { filmFps: 18, flashesPerFrame: 3, openPercent: 50, cameraFps: 25, exposureMilliseconds: 20 },
    { filmFps: 24, flashesPerFrame: 2, openPercent: 40, cameraFps: 50, exposureMilliseconds: 8 },
    { filmFps: 16, flashesPerFrame: 5, openPercent: 62, cameraFps: 30, exposureMilliseconds: 31 },
    {
      filmFps: 20,
      flashesPerFrame: 3,
      openPercent: 50,
      cameraFps: 48,
      exposureMilliseconds: 12,
      pulldownBladeDegrees: 80,
    },
  ];

  test.each(benches)('shows this bench as it was typed: %o', (bench) => {
    const { exposureMilliseconds, ...rest } = bench;
    const entries = Object.fromEntries(
      Object.entries(rest).map(([key, value]) => [key, `${value}`]),
    );
    const root = drawn(
      'flash-match',
      { ...entries, exposureSeconds: `${exposureMilliseconds} ms` },
      'gate-light',
    );
    const unit = root.querySelectorAll('text').find((text) => text.textContent === 'ms');
    const milliseconds = scaleOf(root, 'x', atBottom(numberOf(unit, 'y')));

    const starts = root
      .querySelectorAll('line.pic-dash')
      .filter((line) => numberOf(line, 'y1') < 100)
      .map((line) => milliseconds(numberOf(line, 'x1')));
    starts.forEach((start, index) => {
      expect(start).toBeCloseTo((1000 * index) / bench.filmFps, 0);
    });

    const bars = root.querySelectorAll('rect.pic-outline').map((bar) => {
      const from = numberOf(bar, 'x');
      return { from: milliseconds(from), to: milliseconds(from + numberOf(bar, 'width')) };
    });
    const end = milliseconds(628);
    const inside = bars.filter(({ to }) => to < end - 0.5);
    expect(inside.length).toBeGreaterThan(1);
    bars.forEach(({ from }, index) => {
      expect(from).toBeCloseTo((1000 * index) / bench.cameraFps, 0);
    });
    for (const { from, to } of inside) expect(to - from).toBeCloseTo(exposureMilliseconds, 0);

    const trace = pointsOf(root.querySelector('path.pic-trace'));
    const [dark, bright] = [
      Math.max(...trace.map(({ y }) => y)),
      Math.min(...trace.map(({ y }) => y)),
    ];
    /** Light that passes between two times, in ms of the open gate. */
    const lightIn = (from: number, to: number): number => {
      let light = 0;
      for (const [index, point] of trace.slice(1).entries()) {
        const before = trace[index]!;
        if (before.y !== point.y) continue;
        const overlap =
          Math.min(to, milliseconds(point.x)) - Math.max(from, milliseconds(before.x));
        light += Math.max(0, overlap) * ((dark - point.y) / (dark - bright));
      }
      return light;
    };
    const frame = 1000 / bench.filmFps;
    expect(lightIn(0, frame) / frame).toBeCloseTo(bench.openPercent / 100, 2);
    const flashes = trace.filter(
      ({ x, y }, index) => y === bright && trace[index - 1]?.y === dark && milliseconds(x) < frame,
    );
    expect(flashes).toHaveLength(bench.flashesPerFrame);
    if (bench.pulldownBladeDegrees !== undefined) {
      // The widest dark is the pulldown blade; it may lie on both sides of the start of a frame.
      let widest = 0;
      let since = trace[0]!;
      for (const point of trace) {
        if (point.y !== dark) since = point;
        else if (since.y !== dark) since = point;
        widest = Math.max(widest, milliseconds(point.x) - milliseconds(since.x));
      }
      expect((widest / frame) * 360).toBeCloseTo(bench.pulldownBladeDegrees, -0.3);
    }

    const labels = root
      .querySelectorAll('text.pic-text')
      .filter((text) => numberOf(text, 'y') === 248)
      .map((text) => Number(text.textContent));
    inside.forEach(({ from, to }, index) => {
      const share = lightIn(from, to) / (exposureMilliseconds * (bench.openPercent / 100));
      expect(labels[index]! / 100).toBeCloseTo(share, 1);
      const fill = numberOf(root.querySelectorAll('rect.pic-fill')[index], 'height');
      const first = numberOf(root.querySelectorAll('rect.pic-fill')[0], 'height');
      expect(fill / first).toBeCloseTo(labels[index]! / labels[0]!, 1);
    });
  });
});

describe('bands', () => {
  test.each([
    { filmFps: 18, flashes: 3, readout: 16, exposure: 20 },
    { filmFps: 24, flashes: 2, readout: 10, exposure: 12 },
    { filmFps: 16, flashes: 5, readout: 22, exposure: 18 },
  ])('repeat with the flashes of %o', ({ filmFps, flashes, readout, exposure }) => {
    const root = drawn(
      'flash-match',
      {
        filmFps: `${filmFps}`,
        flashesPerFrame: `${flashes}`,
        readoutSeconds: `${readout} ms`,
        exposureSeconds: `${exposure} ms`,
      },
      'bands',
    );
    const picture = root.querySelector('rect.pic-recorded');
    const veil = root.querySelector('lineargradient') ?? root.querySelector('linearGradient');
    const period = numberOf(veil, 'y2') - numberOf(veil, 'y1');
    expect(numberOf(picture, 'height') / period).toBeCloseTo(
      (filmFps * flashes * readout) / 1000,
      2,
    );

    // The lightest and the darkest row, from so many starts of an exposure over one flash.
    const flash = 1000 / (filmFps * flashes);
    const lit = Array.from({ length: 400 }, (_, start) => {
      let light = 0;
      for (let step = 0; step < 2000; step += 1) {
        const time = (start / 400) * flash + ((step + 0.5) / 2000) * exposure;
        if ((time / flash) % 1 < 0.5) light += 1;
      }
      return light / 1000;
    });
    const axis = root.querySelectorAll('text').find((text) => text.textContent === '100');
    const percent = scaleOf(root, 'x', atBottom(numberOf(axis, 'y')));
    const rows = pointsOf(root.querySelector('path.pic-trace')).map(({ x }) => percent(x));
    expect(Math.min(...rows)).toBeCloseTo(100 * Math.min(...lit), -0.3);
    expect(Math.max(...rows)).toBeCloseTo(100 * Math.max(...lit), -0.3);
  });
});

describe('whole frames', () => {
  /** Share of the light of each film frame in one camera frame, summed over rows and moments. */
  function sharesIn(
    bench: {
      filmFps: number;
      flashes: number;
      cameraFps: number;
      exposure: number;
      readout: number;
    },
    cameraFrame: number,
    shiftSeconds: number,
  ): ReadonlyMap<number, number> {
    const light = new Map<number, number>();
    let all = 0;
    for (let row = 0; row < 60; row += 1) {
      for (let moment = 0; moment < 120; moment += 1) {
        const time =
          shiftSeconds +
          cameraFrame / bench.cameraFps +
          ((row + 0.5) / 60) * bench.readout +
          ((moment + 0.5) / 120) * bench.exposure;
        const place = time * bench.filmFps;
        // Blades as wide as the openings, the first one across the change of film frame.
        const inFlash = (((place * bench.flashes) % 1) + 1) % 1;
        if (inFlash < 0.25 || inFlash > 0.75) continue;
        const frame = Math.floor(place);
        light.set(frame, (light.get(frame) ?? 0) + 1);
        all += 1;
      }
    }
    return new Map([...light].map(([frame, amount]) => [frame, amount / all]));
  }

  test.each([
    { filmFps: 18, flashes: 3, cameraFps: 25, exposure: 1 / 54, readout: 0.016 },
    { filmFps: 24, flashes: 2, cameraFps: 50, exposure: 1 / 60, readout: 0.008 },
    { filmFps: 16, flashes: 3, cameraFps: 30, exposure: 1 / 48, readout: 0 },
  ])('hold the shares that %o gives them, from some start on', (bench) => {
    const root = drawn(
      'whole-frames',
      {
        filmFps: `${bench.filmFps}`,
        flashesPerFrame: `${bench.flashes}`,
        cameraFps: `${bench.cameraFps}`,
        exposureSeconds: `${bench.exposure * 1000} ms`,
        readoutSeconds: `${bench.readout * 1000} ms`,
      },
      'whole-frames',
    );
    const seen = root
      .querySelectorAll('g')
      .filter((group) => group.querySelector('rect.pic-outline') !== null)
      .map((group) => ({
        main: Number(group.querySelector('text.pic-text-large')?.textContent),
        share:
          numberOf(group.querySelector('rect.pic-tint'), 'width') /
          numberOf(group.querySelector('rect.pic-outline'), 'width'),
      }));
    expect(seen.length).toBeGreaterThan(8);
    const faultAt = (shift: number): number => {
      const first = Math.max(...[...sharesIn(bench, 0, shift)].map(([, share]) => share));
      const [zero] = [...sharesIn(bench, 0, shift)].find(([, share]) => share === first)!;
      return Math.max(
        ...seen.map(({ main, share }, index) => {
          const shares = sharesIn(bench, index, shift);
          return Math.abs((shares.get(main - seen[0]!.main + zero) ?? 0) - share);
        }),
      );
    };
    const faults = Array.from({ length: 48 }, (_, step) => faultAt(step / 48 / bench.filmFps));
    expect(Math.min(...faults)).toBeLessThan(0.05);
  });
});

describe('repeat pattern', () => {
  test.each([
    [18, 25],
    [18, 50],
    [16, 24],
    [24, 16],
  ])('shows each film frame of %d as often as a clock at %d does', (native, delivery) => {
    const root = drawn(
      'repeat-pattern',
      { nativeFps: `${native}`, deliveryFps: `${delivery}` },
      'repeat-pattern',
    );
    const counts = root.querySelectorAll('rect.pic-outline').map((film) => {
      const [from, to] = [numberOf(film, 'x'), numberOf(film, 'x') + numberOf(film, 'width')];
      const top = numberOf(film, 'y');
      return root.querySelectorAll('rect.pic-outlined').filter((output) => {
        const x = numberOf(output, 'x');
        const below = numberOf(output, 'y') - top;
        return below > 0 && below < 80 && x >= from - 0.5 && x < to;
      }).length;
    });
    const frames = counts.length;
    const wanted = Array.from({ length: frames * 3 }, () => 0);
    for (let output = 0; output < (wanted.length * delivery) / native; output += 1) {
      const frame = Math.floor((output * native) / delivery + 1e-9);
      if (frame < wanted.length) wanted[frame]! += 1;
    }
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(
      Math.round((frames * delivery) / native),
    );
    const turns = wanted
      .slice(0, frames)
      .map((_, turn) => wanted.slice(turn, turn + frames).join());
    expect(turns).toContain(counts.join());
  });
});

describe('films', () => {
  // Widths and steps of new film, mm: SMPTE 149, 239, 109, 102 and the published tables of the gauges, as
  // transcribed in tests/published.
  const FILMS = [
    ['8mm-type-r', 'Standard 8', 7.976, 3.81],
    ['super-8', 'Super 8', 7.976, 4.234],
    ['16mm', '16 mm', 15.95, 7.62],
    ['35mm', '35 mm', 34.975, 19],
  ] as const;

  test.each(FILMS)('%s is drawn in its own proportions', (gauge, _, width, step) => {
    const root = drawn('gauge-dimensions', { gauge }, 'film-strip');
    const strip = root.querySelector('rect.pic-tint');
    const perMillimetre = numberOf(strip, 'width') / width;
    const pictures = pathBoxes(root.querySelector('path.pic-image'));
    expect((pictures[1]!.y - pictures[0]!.y) / perMillimetre).toBeCloseTo(step, 1);
    const bar = root.querySelector('path.pic-scale')?.getAttribute('d') ?? '';
    const [, from, to] = /^M([\d.]+) [\d.]+V[\d.]+H([\d.]+)/u.exec(bar) ?? [];
    const named = texts(root)
      .filter((text) => /^[\d.]+ mm$/u.test(text))
      .at(-1)!;
    expect((Number(to) - Number(from)) / perMillimetre).toBeCloseTo(Number.parseFloat(named), 1);
  });

  test('a sound record is drawn only where one was chosen, opposite the holes', () => {
    const strip = (sound: string): HTMLElement =>
      drawn('gauge-dimensions', { gauge: '16mm', sound }, 'film-strip');
    const waves = (root: HTMLElement): readonly HTMLElement[] =>
      root
        .querySelectorAll('path.pic-blank')
        .filter((path) => /^M[\d.]+ [\d.]+l-/u.test(path.getAttribute('d') ?? ''));
    expect(waves(strip('none'))).toHaveLength(0);
    const root = strip('optical');
    const [track] = waves(root);
    const film = root.querySelector('rect.pic-tint');
    const middle = numberOf(film, 'x') + numberOf(film, 'width') / 2;
    expect(Number(/^M([\d.]+)/u.exec(track?.getAttribute('d') ?? '')?.[1])).toBeGreaterThan(middle);
    const holes = root
      .querySelectorAll('path.pic-blank')
      .filter((path) => path !== track)
      .flatMap((path) => pathBoxes(path));
    expect(holes.length).toBeGreaterThan(0);
    for (const { x } of holes) expect(x).toBeLessThan(middle);
  });

  test.each([
    ['8', '38', 'one-edge-at-frame-line', 7.976, 3.81],
    ['16', '76.2', 'both-edges-at-frame-line', 15.95, 7.62],
  ])(
    'what fits %s mm and ten pitches of %s mm stands first, to scale',
    (filmWidthMillimetres, pitchLengthMillimetres, perforationPosition, width, step) => {
      const entries = { filmWidthMillimetres, pitchLengthMillimetres, perforationPosition };
      const root = drawn('gauge-finder', entries, 'film-gauges');
      const bar = root.querySelector('path.pic-scale')?.getAttribute('d') ?? '';
      const [, from, to] = /^M([\d.]+) [\d.]+V[\d.]+H([\d.]+)/u.exec(bar) ?? [];
      const perMillimetre = (Number(to) - Number(from)) / 10;
      const [strip] = root.querySelectorAll('rect.pic-tint');
      expect(numberOf(strip, 'width') / perMillimetre).toBeCloseTo(width, 0);
      const pictures = pathBoxes(root.querySelector('path.pic-image'));
      expect((pictures[1]!.y - pictures[0]!.y) / perMillimetre).toBeCloseTo(step, 1);
      expect(texts(root)).toContain('✓ fits');
    },
  );
});

describe('curves', () => {
  const lineOf = (root: HTMLElement, index: number): readonly Point[] => {
    const across = scaleOf(root, 'x', atBottom(364));
    const up = scaleOf(root, 'y', atLeft);
    // Numbers beside an axis stand a little below the height that they name.
    return pointsOf(root.querySelector(`path.pic-line-${index}`)).map(({ x, y }) => ({
      x: across(x),
      y: up(y + 7),
    }));
  };
  const markOf = (root: HTMLElement): number =>
    scaleOf(root, 'x', atBottom(364))(numberOf(root.querySelector('line.pic-mark'), 'x1'));

  test.each([
    { sensor: 13.2, fill: 70, pixels: 1920, blur: 2, fNumber: 2.8 },
    { sensor: 23.5, fill: 60, pixels: 3840, blur: 3, fNumber: 5.6 },
  ])('the diffraction of %o grows with the f-number on the ring', (lens) => {
    const root = drawn(
      'lens-setup',
      {
        gauge: 'super-8',
        pictureWidthMillimetres: '5.31',
        sensorWidthMillimetres: `${lens.sensor}`,
        fillPercent: `${lens.fill}`,
        pixelsAcross: `${lens.pixels}`,
        blurPixels: `${lens.blur}`,
        fNumber: `${lens.fNumber}`,
        pupilRatio: '1',
      },
      'curve',
    );
    // Airy's disc at the sensor, 2.44 wavelengths times the working f-number, in pixels of the sensor.
    const magnification = (lens.sensor * (lens.fill / 100)) / 5.31;
    const pixelMicrometres = (lens.sensor * 1000) / lens.pixels;
    for (const { x, y } of lineOf(root, 0)) {
      const disc = (2.44 * 0.55 * x * (1 + magnification)) / pixelMicrometres;
      expect(Math.abs(y - disc)).toBeLessThan(0.03 * disc + 0.05);
    }
    for (const { y } of lineOf(root, 1)) expect(y).toBeCloseTo(lens.blur, 1);
    expect(markOf(root)).toBeCloseTo(lens.fNumber, 1);
    expect(texts(root)).toContain(`f/${lens.fNumber}`);
  });

  test('the hours of a reel are handling, run and after-work by the minutes that it runs', () => {
    const root = drawn(
      'job-time',
      {
        framesPerReel: '7200',
        filmFps: '18',
        singleFps: '2',
        handlingSeconds: '15',
        afterWorkSeconds: '20',
        repeatPercent: '10',
      },
      'curve',
    );
    const hours = (minutes: number, slower: number): number => (15 + minutes * slower + 20) / 60;
    const [single, real] = [lineOf(root, 0), lineOf(root, 1)];
    for (const { x, y } of single) expect(y).toBeCloseTo(hours(x, 9), 1);
    for (const { x, y } of real) expect(y).toBeCloseTo(hours(x, 1), 1);
    expect(markOf(root)).toBeCloseTo(7200 / 18 / 60, 1);
  });
});

describe('shutter discs', () => {
  /** Angles of the drawn sectors, from the two ends of their outer arc. */
  function sectors(
    root: HTMLElement,
  ): readonly { readonly degrees: number; readonly isOpen: boolean }[] {
    return root
      .querySelectorAll('path.pic-outlined')
      .filter((path) => /^M[\d.]+ [\d.]+A128/u.test(path.getAttribute('d') ?? ''))
      .map((path) => {
        const [, x1, y1, x2, y2] =
          /^M([\d.]+) ([\d.]+)A128 128 0 \d \d ([\d.]+) ([\d.]+)/u.exec(path.getAttribute('d')!) ??
          [];
        const at = (x?: string, y?: string): number => Math.atan2(320 - Number(x), 190 - Number(y));
        const degrees = ((at(x2, y2) - at(x1, y1)) * 180) / Math.PI;
        return { degrees: (degrees + 360) % 360, isOpen: path.classNames.includes('pic-blank') };
      });
  }
  const sorted = (values: readonly number[]): readonly number[] =>
    [...values].sort((a, b) => a - b);

  test.each([
    [
      [54, 54, 72],
      [60, 60, 60],
    ],
    [
      [30, 90],
      [100, 140],
    ],
    [[31, 31, 31], [31, 40, 31].map((mm) => mm)],
  ])('blades %j and openings %j have the angles typed, or their proportion', (blades, openings) => {
    const root = drawn(
      'unequal-blades',
      { bladeDegrees: blades.join('; '), openDegrees: openings.join('; ') },
      'shutter-disc',
    );
    const turn = [...blades, ...openings].reduce((sum, arc) => sum + arc, 0);
    const of = (arcs: readonly number[]): readonly number[] =>
      sorted(arcs.map((arc) => (360 * arc) / turn));
    const found = sectors(root);
    for (const [isOpen, arcs] of [
      [true, of(openings)],
      [false, of(blades)],
    ] as const) {
      const angles = sorted(
        found.filter((each) => each.isOpen === isOpen).map(({ degrees }) => degrees),
      );
      expect(angles).toHaveLength(arcs.length);
      angles.forEach((angle, index) => expect(angle).toBeCloseTo(arcs[index]!, 0));
    }
  });

  test.each([2, 3, 4])('%d blades are so many sectors alike', (blades) => {
    const found = sectors(drawn('flash-rate', { bladesPerTurn: `${blades}` }, 'shutter-disc'));
    expect(found).toHaveLength(2 * blades);
    for (const { degrees } of found) expect(degrees).toBeCloseTo(180 / blades, 0);
  });
});

describe('sound strips', () => {
  test.each([
    [{ system: 'super-8-magnetic', loopErrorFrames: '2' }, 18, 20],
    [{ system: 'super-8-magnetic', loopErrorFrames: '-3' }, 18, 15],
    [{ system: '16mm-optical', taken: 'beside-frame' }, 26, 0],
    [{ system: 'other', separationFrames: '40', loopErrorFrames: '0' }, 40, 40],
  ] as const)('%o lies %d frames ahead and is read at %d', (entries, ahead, read) => {
    const root = drawn('sound-offset', entries, 'sound-strip');
    const frames = root.querySelectorAll('rect.pic-image');
    const step = numberOf(frames[1], 'x') - numberOf(frames[0], 'x');
    const gate = root.querySelector('rect.pic-gate');
    const sound = root.querySelector('rect.pic-sound');
    expect((numberOf(sound, 'x') - numberOf(gate, 'x')) / step).toBeCloseTo(ahead, 0);
    const [from, to] = root.querySelectorAll('circle.pic-head').map((dot) => numberOf(dot, 'cx'));
    expect((to! - from!) / step).toBeCloseTo(read, 0);
    expect(texts(root).some((text) => text.includes(`${ahead} frames`))).toBe(true);
  });
});

describe('range bars', () => {
  test.each([
    { from: 0.3, to: 3.3, camera: 9, spacing: 2 },
    { from: 0.1, to: 2.9, camera: 5, spacing: 3 },
  ])('hold the densities and the stops of %o', ({ from, to, camera, spacing }) => {
    const root = drawn(
      'density-range',
      {
        minimumDensity: `${from}`,
        maximumDensity: `${to}`,
        cameraStops: `${camera}`,
        spacingStops: `${spacing}`,
      },
      'range-bars',
    );
    const unit = root.querySelectorAll('text').find((text) => text.textContent === 'stops');
    const stops = scaleOf(root, 'x', atBottom(numberOf(unit, 'y')));
    const [film, ...exposures] = root.querySelectorAll('rect.pic-bar').map((bar) => ({
      from: stops(numberOf(bar, 'x')),
      to: stops(numberOf(bar, 'x') + numberOf(bar, 'width')),
    }));
    // A density of 1 is ten times the light, log2 10 stops.
    const range = (to - from) * Math.log2(10);
    expect(film!.to - film!.from).toBeCloseTo(range, 1);
    expect(exposures.length).toBe(1 + Math.ceil((range - camera) / spacing - 1e-9));
    exposures.forEach((exposure, index) => {
      expect(exposure.from - film!.from).toBeCloseTo(index * spacing, 1);
      expect(exposure.to - exposure.from).toBeCloseTo(camera, 1);
    });
  });
});

test('every picture maker is asked above', () => {
  const names = Object.keys(makers).map((path) => /([\w-]+)\.tsx$/u.exec(path)![1]!);
  expect(names.length).toBeGreaterThan(5);
  expect(names.filter((name) => !asked.has(name))).toEqual([]);
});
