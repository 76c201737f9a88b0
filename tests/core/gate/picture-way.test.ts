import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/file/picture-way/worksheet.ts';

const run = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries)).outcome!;

// Written out by hand at the bench, not from the code: what is seen straight in the gate.
// Common practice, no source.
const GATE = [
  ['down', 'mirrored', 'forwards', 'single', 'right'],
  ['down', 'mirrored', 'forwards', 'symmetric', 'right'],
  ['up', 'right', 'backwards', 'single', 'tail first and back to front'],
  ['up', 'right', 'backwards', 'symmetric', 'tail first and back to front'],
  ['down', 'right', 'forwards', 'single', 'cannot be'],
  ['down', 'right', 'forwards', 'symmetric', 'back to front'],
  ['up', 'mirrored', 'backwards', 'single', 'cannot be'],
  ['up', 'mirrored', 'backwards', 'symmetric', 'tail first'],
] as const;

const CAUSES = {
  right: /^the film is threaded right$/u,
  'tail first and back to front': /^tail first and back to front$/u,
  'back to front': /^the film is in back to front$/u,
  'tail first': /^tail first, with the right face$/u,
  'cannot be': /^not decided$/u,
} as const;

// What a camera sees of a film that projects right, and what turns it; by hand, common practice.
const PATHS = [
  ['gate', 'down', 'mirrored', ['vflip']],
  ['gate-mirror', 'down', 'right', ['hflip', 'vflip']],
  ['screen-front', 'up', 'right', []],
  ['screen-front-mirror', 'up', 'mirrored', ['hflip']],
  ['screen-behind', 'up', 'mirrored', ['hflip']],
] as const;

const filtersIn = (text: string): readonly string[] => text.match(/[hv]flip/gu) ?? [];

describe('the way of the picture', () => {
  test.each(GATE)(
    'heads %s, lettering %s, %s, %s row: %s',
    (heads, lettering, motion, rows, cause) => {
      const outcome = run({ path: 'gate', heads, lettering, motion, rows });
      expect(outcome.answers['cause']!.text).toMatch(CAUSES[cause]);
      expect(outcome.verdict.level).toBe(cause === 'right' ? 'good' : 'stop');
      // Whatever is wrong in hand is mended there; the flip of the file belongs to the path alone.
      expect(filtersIn(outcome.answers['inFile']!.text)).toEqual(['vflip']);
    },
  );

  test.each(PATHS)('%s shows heads %s, lettering %s', (path, heads, lettering, filters) => {
    for (const rows of ['single', 'symmetric']) {
      const outcome = run({ path, heads, lettering, rows, motion: 'forwards' });
      expect(outcome.verdict.level).toBe('good');
      expect(filtersIn(outcome.answers['inFile']!.text)).toEqual(filters);
      expect(filtersIn(outcome.commands![0]!.text)).toEqual(filters);
      expect(outcome.answers['inHand']!.text).toBe('Leave the film as it is.');
    }
  });

  test.each(PATHS)(
    'a camera on its head adds half a turn on the path %s',
    (path, heads, lettering, filters) => {
      const outcome = run({
        path,
        camera: 'upside-down',
        heads: heads === 'up' ? 'down' : 'up',
        lettering,
        motion: 'forwards',
      });
      expect(outcome.verdict.level).toBe('good');
      const both = ['hflip', 'vflip'].filter(
        (filter) => !(filters as readonly string[]).includes(filter),
      );
      expect(filtersIn(outcome.answers['inFile']!.text)).toEqual(both);
    },
  );

  test('never calls right what was not looked at', () => {
    let asked = 0;
    for (const [path] of PATHS) {
      for (const rows of ['single', 'symmetric']) {
        for (const heads of ['up', 'down', 'not-looked']) {
          for (const lettering of ['right', 'mirrored', 'not-looked']) {
            for (const motion of ['forwards', 'backwards', 'not-looked']) {
              if (![heads, lettering, motion].includes('not-looked')) continue;
              asked += 1;
              const { verdict } = run({ path, rows, heads, lettering, motion });
              // Heads that were not looked at follow from lettering and movement, or the other way round.
              const isImplied = lettering !== 'not-looked' && motion !== 'not-looked';
              if (!isImplied) expect(verdict.level).not.toBe('good');
            }
          }
        }
      }
    }
    expect(asked).toBe(5 * 2 * 19);
  });

  test('opens with nothing looked at, and decides nothing by that', () => {
    const { verdict, answers } = run({});
    expect(verdict.level).toBe('care');
    expect(verdict.sentence).toBe(
      'Not looked at yet: play the first seconds and choose what you see. Still to look at: holes, heads, lettering, movement.',
    );
    expect(answers['cause']!.text).toBe('not decided');
    expect(answers['inHand']!.text).toBe('Look first; change nothing yet.');
  });

  test('counts holes that were not looked at as those that fit either way', () => {
    for (const heads of ['up', 'down', 'not-looked']) {
      for (const lettering of ['right', 'mirrored', 'not-looked']) {
        for (const motion of ['forwards', 'backwards', 'not-looked']) {
          const seen = { heads, lettering, motion };
          const unseen = run({ ...seen, rows: 'not-looked' });
          const either = run({ ...seen, rows: 'symmetric' });
          expect(unseen.verdict.level).toBe(either.verdict.level);
          expect(unseen.answers['cause']).toEqual(either.answers['cause']);
        }
      }
    }
  });

  test('names the contradiction of a movement that does not go with the heads', () => {
    const { verdict } = run({
      rows: 'single',
      heads: 'down',
      lettering: 'mirrored',
      motion: 'backwards',
    });
    expect(verdict.level).toBe('stop');
    expect(verdict.sentence).toContain('look again');
  });
});

/** A strip of film in the hand: where its head points, which face is towards the lens, where its holes are. */
describe('a strip turned about in space', () => {
  type Vector = readonly [number, number, number];
  /** x to the right and y up as seen from the lens, z from the lamp to the lens. */
  interface Strip {
    /** Way from the tail to the head of a picture on the film. */
    readonly up: Vector;
    /** Way from the left to the right of a picture that is looked at through the base as shot. */
    readonly right: Vector;
    readonly holes: Vector;
  }
  const turnAbout =
    (axis: 0 | 1 | 2) =>
    (vector: Vector): Vector =>
      vector.map((part, at) => (at === axis || part === 0 ? part : -part)) as unknown as Vector;
  const rotated = ({ up, right, holes }: Strip, axis: 0 | 1 | 2): Strip => {
    const turn = turnAbout(axis);
    return { up: turn(up), right: turn(right), holes: turn(holes) };
  };
  // A film that projects right hangs on its head in the gate, mirrored as seen from the lens.
  const right: Strip = { up: [0, -1, 0], right: [1, 0, 0], holes: [-1, 0, 0] };

  test.each([
    ['as threaded', [], 'down', 'mirrored', 'forwards'],
    ['end for end in its plane', [2], 'up', 'mirrored', 'backwards'],
    ['turned over along its length', [1], 'down', 'right', 'forwards'],
    ['turned over across its length', [0], 'up', 'right', 'backwards'],
  ] as const)('%s is what the sheet says it is', (_, axes, heads, lettering, motion) => {
    const strip = axes.reduce<Strip>((turned, axis) => rotated(turned, axis), right);
    expect(strip.up[1] > 0 ? 'up' : 'down').toBe(heads);
    // Seen from the lens: right-handed when up and right make the picture as it was shot.
    const isMirrored = strip.right[0] * strip.up[1] < 0;
    expect(isMirrored ? 'mirrored' : 'right').toBe(lettering);
    const fitsClaw = strip.holes[0] === right.holes[0];
    const { answers } = run({ heads, lettering, motion, rows: 'single' });
    expect(answers['cause']!.text === 'not decided').toBe(!fitsClaw);
    const either = run({ heads, lettering, motion, rows: 'symmetric' });
    expect(either.answers['cause']!.text).not.toBe('not decided');
    expect(either.answers['cause']!.text.includes('tail first')).toBe(strip.up[1] > 0);
  });
});
