import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DRAWINGS } from '../../src/drawings/drawings.ts';
import type { FilmPath } from '../../src/drawings/kit/film-path.ts';
import { projectFolder } from '../walls/source-files.ts';
import { filmSamples } from './film-samples.ts';

const named = (id: string) => {
  const found = DRAWINGS.find((drawing) => drawing.id === id);
  if (found === undefined) throw new Error(`no drawing ${id}`);
  return found;
};

const lengthOf = (path: FilmPath): number => {
  const samples = filmSamples(path);
  return samples.slice(1).reduce((sum, here, index) => {
    const before = samples[index]!;
    return sum + Math.hypot(here.x - before.x, here.y - before.y);
  }, 0);
};

/** Each letter F of a drawing: 1 or −1 for the side of its bars, and for its head up or down. */
function lettersIn(id: string): readonly (readonly [number, number])[] {
  const letters = named(id)
    .marks.join('')
    .matchAll(/class="z" d="M([\d.]+) ([\d.]+)V([\d.]+)H([\d.]+)/gu);
  return [...letters].map(([, ...numbers]) => {
    const [stem, foot, top, tip] = numbers.map(Number);
    return [Math.sign(tip! - stem!), Math.sign(foot! - top!)] as const;
  });
}

/** Places of the film on a machine whose gate is upright: its straight piece there. */
function gateOf(path: FilmPath): {
  readonly top: number;
  readonly bottom: number;
  readonly index: number;
} {
  const index = path.segments.findIndex(
    (segment) =>
      segment.kind === 'line' &&
      segment.from.x === segment.to.x &&
      segment.to.y - segment.from.y > 80,
  );
  const gate = path.segments[index];
  if (gate?.kind !== 'line') throw new Error('no straight piece in the gate');
  return { top: gate.from.y, bottom: gate.to.y, index };
}

describe('the film paths', () => {
  test.each(['film-path', 'film-path-sound', 'threading'])(
    'of %s have loops that bulge away from the gate',
    (id) => {
      const [path] = named(id).paths;
      const { top, bottom, index } = gateOf(path!);
      const samples = filmSamples(path!);
      const above = samples.filter(({ segment }) => segment === index - 1);
      const below = samples.filter(({ segment }) => segment === index + 1);
      // Higher than where it leaves the sprocket and than the gate; lower than where it meets the next wheel.
      expect(Math.min(...above.map(({ y }) => y))).toBeLessThan(Math.min(above[0]!.y, top) - 15);
      expect(Math.max(...below.map(({ y }) => y))).toBeGreaterThan(
        Math.max(below.at(-1)!.y, bottom) + 15,
      );
    },
  );

  test.each(['film-path', 'film-path-sound', 'threading'])(
    'of %s lie round the teeth by a quarter turn and more',
    (id) => {
      const { paths, wheels } = named(id);
      const arcs = paths.flatMap(({ segments }) =>
        segments.filter((segment) => segment.kind === 'arc'),
      );
      for (const wheel of wheels.filter(({ kind }) => kind === 'sprocket' || kind === 'drum')) {
        const round = arcs.filter((arc) => arc.wheel === wheel).map(({ sweep }) => Math.abs(sweep));
        expect(Math.max(...round), `${wheel.kind} at ${wheel.centre.y}`).toBeGreaterThan(
          Math.PI / 2,
        );
        expect(Math.max(...round)).toBeLessThan(1.7 * Math.PI);
      }
    },
  );

  test('have the feed reel above and the take-up below, and the drum between loop and last sprocket', () => {
    for (const id of ['film-path', 'film-path-sound', 'threading', 'projector']) {
      const reels = named(id).wheels.filter(({ kind }) => kind === 'reel');
      expect(reels).toHaveLength(2);
      expect(reels[0]!.centre.y).toBeLessThan(reels[1]!.centre.y);
    }
    const [path] = named('film-path-sound').paths;
    const kinds = path!.segments.flatMap((segment) =>
      segment.kind === 'arc' ? [segment.wheel.kind] : [segment.kind],
    );
    expect(kinds.indexOf('drum')).toBeGreaterThan(kinds.lastIndexOf('loop'));
    expect(kinds.lastIndexOf('sprocket')).toBeGreaterThan(kinds.indexOf('drum'));
  });

  test('turn both reels the same way when film is rewound from top to top', () => {
    const [from, onto] = named('rewinding').wheels;
    expect(from!.turn).toBe(onto!.turn);
    const line = named('rewinding').paths[0]!.segments.find(({ kind }) => kind === 'line');
    if (line?.kind !== 'line') throw new Error('no straight film');
    expect(Math.abs(line.to.y - line.from.y) / (line.to.x - line.from.x)).toBeLessThan(0.05);
  });

  test('lose film out of a loop when the claw pulls, small and large alike', () => {
    const { paths } = named('loop-size');
    const lost = [0, 2, 4].map((index) => lengthOf(paths[index]!) - lengthOf(paths[index + 1]!));
    for (const each of lost) expect(each).toBeGreaterThan(15);
    const slack = [1, 3, 5].map((index) => lengthOf(paths[index]!));
    expect(slack[0]).toBeLessThan(slack[1]!);
    expect(slack[1]).toBeLessThan(slack[2]!);
  });
});

describe('what is written in the drawings', () => {
  test('gives the separations of SMPTE 41 and of the table, as frames and as film', () => {
    const notes = named('sound-separation').labels.map(
      ({ text, note }) => `${text}: ${note ?? ''}`,
    );
    // 18 × 4.234, 56 × 3.810, 26 × 7.620 and 28 × 7.620 mm.
    expect(notes).toEqual(
      expect.arrayContaining([
        'Super 8, stripe: 18 frames, 76 mm',
        'Standard 8, stripe: 56 frames, 213 mm',
        '16 mm, optical: 26 frames, 198 mm',
        '16 mm, stripe: 28 frames, 213 mm',
      ]),
    );
    expect(named('start-mark').description).toContain('26 frames nearer the head');
  });

  test('turns the letter F as each way of looking does', () => {
    // Right and up of somebody who looks from the lamp to the screen; each step multiplies both.
    const inGate = [-1, -1] as const;
    const lens = [-1, -1] as const;
    const fromTheOtherSide = [-1, 1] as const;
    const mirror = [-1, 1] as const;
    const ways: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
      'camera-straight': [inGate, fromTheOtherSide],
      'camera-mirror': [inGate, fromTheOtherSide, mirror],
      'camera-screen': [inGate, lens],
      'camera-through-screen': [inGate, lens, fromTheOtherSide],
      'camera-aerial': [inGate, lens, fromTheOtherSide],
    };
    for (const [id, steps] of Object.entries(ways)) {
      const seen = steps.reduce(([right, up], step) => [right * step[0], up * step[1]], [1, 1]);
      expect(lettersIn(id), id).toEqual([seen]);
    }
  });

  test('shows the four ways of F, the ones without a mirror from the face or with the tail first', () => {
    expect(lettersIn('four-ways')).toEqual([
      [1, -1],
      [1, 1],
      [-1, -1],
      [-1, 1],
    ]);
  });

  test('stands in some chapter, every drawing of it', () => {
    const chapters = globSync(join(projectFolder, 'content/chapters/**/*.mdx'))
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n');
    const shown = new Set(
      [...chapters.matchAll(/<Drawing id="([^"]+)"/gu)].map((match) => match[1]),
    );
    expect([...shown].toSorted()).toEqual(DRAWINGS.map(({ id }) => id).toSorted());
    expect(shown.size).toBeGreaterThanOrEqual(28);
  });
});
