// Indexes put together by hand, each with one thing in it that makes a copy impossible.
import { describe, expect, it } from 'vitest';
import Fraction from 'fraction.js';
import { saveCopy } from '../../src/clip/save/save-copy.ts';
import { bytes, box, movieOf, word, zeros, type MovieParts } from '../tools/hand-made-movie.ts';

const PICTURES = 6;

/** A whole file: type, index, and pictures that begin like JPEG; the index counts from byte 1000. */
function fileOf(parts: MovieParts, extra: readonly Uint8Array[] = []): Blob {
  const index = movieOf(PICTURES, 100, 0, parts);
  const type = box('ftyp', bytes('qt  '), word(0));
  const before = bytes(type, index, ...extra);
  const pictures = Array.from({ length: PICTURES }, (_, at) => bytes([0xff, 0xd8, at], zeros(97)));
  const gap = box('free', zeros(1000 - before.length - 16));
  return new Blob([new Uint8Array(bytes(before, gap, box('mdat', ...pictures)))]);
}

async function outcomeOf(file: Blob, cameraFrames: readonly number[] = [0, 2, 5]): Promise<string> {
  const copy = await saveCopy(file, { cameraFrames, filmFps: new Fraction(18) });
  return copy.kind === 'saved'
    ? `saved ${copy.checked.frameCount} as ${copy.extension}`
    : `${copy.refusal.obstacle}: ${copy.refusal.sentence} ${copy.refusal.advice}`;
}

describe('a film made from an index put together by hand', () => {
  it('is saved where nothing speaks against it', async () => {
    expect(await outcomeOf(fileOf({}))).toBe('saved 3 as mov');
    expect(await outcomeOf(fileOf({ lists: [box('ctts', word(0, 1, PICTURES, 512))] }))).toBe(
      'saved 3 as mov',
    );
  });

  it.each<[string, MovieParts, RegExp]>([
    [
      'two sample descriptions',
      { entries: [box('jpeg', zeros(78)), box('jpeg', zeros(78))] },
      /^several-descriptions: .*2 ways/u,
    ],
    ['a change of description', { description: 2 }, /^several-descriptions: /u],
    ['an encrypted entry', { entries: [box('encv', zeros(78))] }, /^encrypted: /u],
    ['keys beside the pictures', { lists: [box('senc', word(0, 0))] }, /^encrypted: /u],
    [
      'few pictures that stand alone',
      { lists: [box('stss', word(0, 2, 1, 4))] },
      /^few-stand-alone: Only 2 of the 6 /u,
    ],
    [
      'pictures that stand alone in part',
      { lists: [box('stps', word(0, 1, 3))] },
      /^few-stand-alone: /u,
    ],
    ['another order', { lists: [box('ctts', word(0, 2, 3, 512, 3, 1024))] }, /^reordered: /u],
    [
      'two hidden pictures',
      { edits: box('elst', word(0, 1, 4 * 512, 2 * 512, 0x10000)) },
      /^edit-list: .*2 of its pictures are hidden/u,
    ],
    [
      'pictures in another file',
      { references: box('dref', word(0, 1), box('url ', word(0), bytes('reel.mov\0'))) },
      /^media-elsewhere: /u,
    ],
    [
      'a coding of which nothing is known',
      { entries: [box('abcd', zeros(78))] },
      /^unknown-codec: .*“abcd”/u,
    ],
    [
      'pictures that do not begin like their coding',
      { entries: [box('apch', zeros(78))] },
      /^not-proven: Camera frame 0 /u,
    ],
    ['fragments', { movie: [box('mvex', box('trex', zeros(24)))] }, /^fragmented: /u],
  ])('is refused for %s', async (_, parts, refusal) => {
    expect(await outcomeOf(fileOf(parts))).toMatch(refusal);
  });

  it('is saved where an edit list hides nothing', async () => {
    for (const edits of [
      box('elst', word(0, 1, PICTURES * 512, 0, 0x10000)),
      // An empty stretch first: the picture begins later than the sound.
      box('elst', word(0, 2, 700, 0xffffffff, 0x10000, PICTURES * 512, 0, 0x10000)),
      box('elst', word(0, 1, 0, 0, 0x10000)),
    ]) {
      expect(await outcomeOf(fileOf({ edits }))).toBe('saved 3 as mov');
    }
  });

  it('answers at once to an edit list of thousands of pieces', async () => {
    const pieces = Array.from({ length: 20_000 }, () => [512, 0, 0x10000]).flat();
    const index = movieOf(PICTURES, 100, 0, { edits: box('elst', word(0, 20_000, ...pieces)) });
    const file = new Blob([new Uint8Array(bytes(box('ftyp', bytes('qt  '), word(0)), index))]);
    expect(await outcomeOf(file)).toMatch(/^edit-list: /u);
  });
});
