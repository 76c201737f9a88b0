import { describe, expect, test } from 'vitest';
import { lineDrawing, type Label } from '../../src/drawings/kit/drawing.ts';
import { FilmRun, type FilmPath } from '../../src/drawings/kit/film-path.ts';
import { point } from '../../src/drawings/kit/point.ts';
import { renderDrawing } from '../../src/drawings/kit/render.ts';
import { reel, sprocket } from '../../src/drawings/kit/wheels.ts';
import {
  arrowFaults,
  filmFaults,
  leaderFaults,
  mirrorFaults,
  nameFaults,
} from './drawing-faults.ts';

const sheets = [
  ':root { --ink: #000; } @media (prefers-contrast: more) { } @media (forced-colors: active) { }',
];

const sample = (
  labels: readonly Label[],
  parts: Partial<Parameters<typeof lineDrawing>[0]> = {},
) => {
  const drawing = lineDrawing({
    id: 'sample',
    title: 'A sample',
    description: 'A sample',
    height: 300,
    marks: [],
    labels,
    ...parts,
  });
  const svg = renderDrawing(drawing, sheets);
  return {
    names: [...nameFaults(drawing, svg, 'wide'), ...nameFaults(drawing, svg, 'narrow')],
    leaders: leaderFaults(drawing, svg),
    film: filmFaults(drawing),
    arrows: arrowFaults(drawing),
    mirrors: mirrorFaults(drawing),
  };
};

const from = reel(100, 100, 50, 'clockwise');
const onto = sprocket(300, 180, 'anticlockwise');
const good = FilmRun.offReel(from, onto).path(1);

/** The path with its straight piece moved sideways at its end. */
const bent: FilmPath = {
  segments: good.segments.map((segment) =>
    segment.kind === 'line' ? { ...segment, to: point(segment.to.x + 3, segment.to.y) } : segment,
  ),
};

describe('the checks of the drawings', () => {
  test('pass what is right', () => {
    const faults = sample([{ text: 'reel', x: 400, y: 60, to: point(60, 40) }], {
      paths: [good],
      wheels: [from, onto],
    });
    expect(Object.values(faults).flat()).toEqual([]);
  });

  test('find names that overlap, leave the sheet or lie on film', () => {
    expect(
      sample([
        { text: 'one', x: 100, y: 100 },
        { text: 'two', x: 110, y: 104 },
      ]).names,
    ).not.toEqual([]);
    expect(sample([{ text: 'a name too long for its place', x: 560, y: 100 }]).names).not.toEqual(
      [],
    );
    expect(
      sample([{ text: 'on the film', x: 180, y: 120 }], { paths: [good], wheels: [from, onto] })
        .names,
    ).not.toEqual([]);
    expect(
      sample([{ text: 'on a strip', x: 100, y: 100 }], {
        areas: [{ x: 90, y: 90, width: 50, height: 20 }],
      }).names,
    ).not.toEqual([]);
  });

  test('find leaders that cross film, each other or a name', () => {
    const crossing: readonly Label[] = [
      { text: 'one', x: 400, y: 260, to: point(200, 40) },
      { text: 'two', x: 400, y: 60, to: point(200, 240) },
    ];
    expect(sample(crossing).leaders.join()).toContain('crosses the leader');
    expect(
      sample([{ text: 'one', x: 400, y: 60, to: point(200, 240) }], {
        paths: [good],
        wheels: [from, onto],
      }).leaders.join(),
    ).toContain('crosses the film');
    expect(
      sample([
        { text: 'one', x: 500, y: 100, to: point(100, 100) },
        { text: 'two', x: 300, y: 100 },
      ]).leaders.join(),
    ).toContain('runs through');
  });

  test('find film without a tangent, against a wheel, or on no wheel', () => {
    expect(sample([], { paths: [bent], wheels: [from, onto] }).film.join()).toMatch(/gap|tangent/u);
    const turned = { ...onto, turn: 'clockwise' as const };
    expect(sample([], { paths: [good], wheels: [from, turned] }).film.join()).toContain(
      'turns against',
    );
    expect(
      sample([], {
        paths: [good],
        wheels: [from, onto, reel(500, 100, 30, 'clockwise')],
      }).film.join(),
    ).toContain('no film lies');
  });

  test('find arrows that run or turn the wrong way, and mirrors with unequal angles', () => {
    const backwards = { place: point(190, 110), run: point(-1, 0) };
    expect(sample([], { paths: [good], runArrows: [backwards] }).arrows).not.toEqual([]);
    const arrow = { centre: from.centre, radius: 60, fromAngle: 0, sweep: -0.5, turn: from.turn };
    expect(
      sample([], { paths: [good], wheels: [from, onto], turnArrows: [arrow] }).arrows,
    ).not.toEqual([]);
    const ray = {
      from: point(0, 100),
      at: point(100, 100),
      to: point(100, 200),
      mirror: point(1, 1),
    };
    expect(sample([], { reflections: [ray] }).mirrors).toEqual([]);
    expect(sample([], { reflections: [{ ...ray, mirror: point(1, 0.9) }] }).mirrors).not.toEqual(
      [],
    );
  });
});
