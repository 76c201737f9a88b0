import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchJson } from '../../src/ui/bench/bench-schema.ts';
import { LARGEST_FILE_BYTES, parseFileText } from '../../src/ui/bench/bench-file.ts';
import { anyBench } from './any-bench.ts';

const bench = '{"name":"A","entries":{"projector.filmFps":"18"}}';

describe('an opened file', () => {
  it('gives back the state that was saved', () => {
    const described = anyBench.filter(({ benches, reels }) => benches.length + reels.length > 0);
    fc.assert(
      fc.property(described, (state) => {
        expect(parseFileText(`${benchJson(state, 2)}\n`)).toEqual({ ok: true, state, faults: [] });
      }),
    );
  });

  it.each([
    ['a text', 'name,film rate\nClub,18\n', /not a JSON file/u],
    ['an empty file', '', /not a JSON file/u],
    ['half a file', `{"version":1,"benches":[${bench}`, /not a JSON file/u],
    ['a list', `[${bench}]`, /does not say its version/u],
    ['null', 'null', /does not say its version/u],
    ['a number', '1', /does not say its version/u],
    ['another program’s file', '{"settings":{"fps":18}}', /does not say its version/u],
    ['a version in words', `{"version":"1","benches":[${bench}]}`, /does not say its version/u],
    ['a later version', `{"version":4,"benches":[${bench}]}`, /later edition/u],
    ['a version that never was', `{"version":0.5,"benches":[${bench}]}`, /never was/u],
    ['no bench at all', '{"version":1}', /no bench and no reel/u],
    ['__proto__ on top', `{"version":1,"__proto__":{"a":1},"benches":[${bench}]}`, /“__proto__”/u],
    [
      'constructor deep inside',
      '{"version":1,"benches":[{"name":"A","entries":{"constructor":"x"}}]}',
      /“constructor”/u,
    ],
    [
      'prototype in a list of lists',
      `{"version":1,"benches":[${bench}],"x":[[{"prototype":0}]]}`,
      /“prototype”/u,
    ],
  ])('is refused whole: %s', (_, text, reason) => {
    const reading = parseFileText(text);
    expect(reading.ok).toBe(false);
    expect(!reading.ok && reading.reason).toMatch(reason);
  });

  it('is refused when it is larger than 1 MB, counted in bytes', () => {
    const padded = (bytes: number): string => {
      const frame = `{"version":1,"benches":[${bench}],"x":""}`;
      return frame.replace('""}', `"${'a'.repeat(bytes - frame.length)}"}`);
    };
    expect(parseFileText(padded(LARGEST_FILE_BYTES)).ok).toBe(true);
    const over = parseFileText(padded(LARGEST_FILE_BYTES + 1));
    expect(!over.ok && over.reason).toMatch(/larger than 1 MB/u);
    const wide = parseFileText(`{"version":1,"benches":[${bench}],"x":"${'é'.repeat(500_000)}"}`);
    expect(!wide.ok && wide.reason).toMatch(/larger than 1 MB/u);
  });

  it('is refused without an end in sight when it is nested without end', () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
    expect(parseFileText(deep).ok).toBe(false);
    expect(parseFileText(`{"version":1,"x":${deep}}`).ok).toBe(false);
  });

  it('leaves every object as it was', () => {
    parseFileText('{"version":1,"__proto__":{"polluted":"yes"},"benches":[]}');
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('names what it passes over', () => {
    const reading = parseFileText(`{"version":1,"benches":[${bench}, 5],"later":true}`);
    expect(reading.ok && reading.faults).toEqual([
      'Bench 2: cannot be read',
      '“later” is not known here',
    ]);
  });
});
