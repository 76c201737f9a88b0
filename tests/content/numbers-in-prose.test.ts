import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'astro/zod';
import { describe, expect, it } from 'vitest';
import { numbersWithUnits, unsourcedNumbers } from './numbers-in-prose.ts';
import { readChapters } from './read-content.ts';

const allowedSchema = z.array(
  z.strictObject({
    number: z.string(),
    reason: z.string().min(4),
    chapter: z.string().optional(),
  }),
);
const allowed = allowedSchema.parse(
  parse(readFileSync(new URL('allowed-numbers.yaml', import.meta.url), 'utf8')),
);
const chapters = readChapters();
/** These are names of gauges in this book; a measurement that looks like one is never exact anyway. */
const gaugeNames = new Set(['8 mm', '9.5 mm', '16 mm', '17.5 mm', '35 mm']);

describe('numbers with units in the chapters', () => {
  const used = new Set<(typeof allowed)[number]>();

  it.each(chapters)('are all vouched for in $id', ({ id, path, body, frontmatter }) => {
    const isAllowed = (number: string): boolean => {
      if (gaugeNames.has(number)) return true;
      const entry = allowed.find(
        (each) => each.number === number && (each.chapter === undefined || each.chapter === id),
      );
      if (entry !== undefined) used.add(entry);
      return entry !== undefined;
    };
    // What the lines on top say must be said again, with its source, in the text below.
    const below = body.replaceAll(/\s+/gu, ' ');
    const onTop = [...frontmatter.inShort, frontmatter.question, frontmatter.description ?? '']
      .flatMap(numbersWithUnits)
      .filter((number) => !isAllowed(number) && !below.includes(number));
    const found = unsourcedNumbers(body, isAllowed).map(
      ({ line, number, text }) =>
        `${path} body line ${line}: “${number}” in “${text.slice(0, 90)}”`,
    );
    expect(
      [...onTop.map((number) => `${path} frontmatter: “${number}” is not in the text`), ...found],
      'print it with <Value />, cite a <Source /> in the same paragraph, or enter it with a reason ' +
        'in tests/content/allowed-numbers.yaml',
    ).toEqual([]);
  });

  it('leave no stale entry in the allowed list', () => {
    if (chapters.length === 0) return;
    expect(allowed.filter((entry) => !used.has(entry)).map(({ number }) => number)).toEqual([]);
  });
});

describe('the search for numbers', () => {
  it.each([
    ['It runs at 18 frames/s.', ['18 frames/s']],
    ['about 50 % of it', ['50 %']],
    ['exposes for 1/54 s now', ['1/54 s']],
    ['at 16 2/3 frames/s', ['16 2/3 frames/s']],
    ['at 16⅔ frames per second', ['16⅔ frames per second']],
    ['30000/1001 frames/s', ['30000/1001 frames/s']],
    ['between 20 and 25 °C', ['20 and 25 °C']],
    ['10–15 minutes', ['10–15 minutes']],
    ['a 180° shutter', ['180°']],
    ['a 50 ft reel, a 400-foot reel', ['50 ft', '400-foot']],
    ['4,5 mm and 12 345 frames', ['4,5 mm', '12 345 frames']],
    ['0.7 semitones; 3 stops', ['0.7 semitones', '3 stops']],
    ['5.31 × 4.01 mm', ['5.31 × 4.01 mm']],
    ['In 1938, part 2 of 3, chapter 4.', []],
    ['Super 8 has 3 blades on 2 shafts.', []],
    ['Section 8 in the house', []],
    ['in the 1960s, in 1024s', []],
    ['35mm and 20ms, 3 s, 3s', ['35mm', '20ms', '3 s']],
  ])('reads “%s”', (text, numbers) => {
    expect(numbersWithUnits(text).filter((number) => number !== '8 in')).toEqual(numbers);
  });

  const none = (): boolean => false;
  const lines = (body: string): readonly number[] =>
    unsourcedNumbers(body, none).map(({ line }) => line);

  it('finds a bare number in a paragraph, a list item, a heading, a caution and a caption', () => {
    expect(lines('Words.\n\nIt runs at 18 frames/s.')).toEqual([3]);
    expect(lines('- one\n- 50 % of it\n- three')).toEqual([2]);
    expect(lines('## At 24 frames/s\n\nText.')).toEqual([1]);
    expect(lines('<Caution about="Heat">\nIt melts at 50 °C.\n</Caution>')).toEqual([2]);
    expect(lines('<Figure id="a" caption="At 18 frames/s" entries="filmFps=24" />')).toEqual([1]);
    expect(lines('| a | b |\n|---|---|\n| 8 | 4.2 mm |')).toEqual([1]);
  });

  it('lets a source vouch for its own paragraph, item or table only', () => {
    expect(lines('It melts at 50 °C <Source id="a" at="page 3" />.')).toEqual([]);
    expect(lines('It melts at 50 °C\nin a hot room. <Source\n  id="a"\n/>')).toEqual([]);
    expect(lines('<Source id="a" />\n\nIt melts at 50 °C.')).toEqual([3]);
    expect(lines('- at 50 °C\n- at 60 °C <Source id="a" />')).toEqual([1]);
    expect(lines('| a |\n|---|\n| 4.2 mm <Source id="a" /> |')).toEqual([]);
    expect(lines('| a |\n|---|\n| 4.2 mm |\n\nAs measured. <Source id="a" />')).toEqual([]);
    expect(lines('As measured: <Source id="a" />\n\n| a |\n|---|\n| 4.2 mm |')).toEqual([]);
    expect(lines('<Source id="a" />\n\nA.\n\n| a |\n|---|\n| 4.2 mm |')).toEqual([5]);
  });

  it('leaves out what components print, code and comments', () => {
    expect(lines('It is <Value worksheet="a" answer="b" entries="x=18 frames/s" /> now.')).toEqual(
      [],
    );
    expect(lines('Type `1/54 s` there.')).toEqual([]);
    expect(lines('```\nsox in.wav out.wav speed 3 s\n```')).toEqual([]);
    expect(lines('{/* 18 frames/s */}')).toEqual([]);
    expect(lines('<Formula tex="18 s > 3 s" />')).toEqual([]);
    expect(lines('<Figure id="a" caption="At 18 frames/s" entries="filmFps=18; b=2" />')).toEqual(
      [],
    );
  });

  it('obeys the allowed list', () => {
    expect(unsourcedNumbers('It is 16 mm film.', (number) => number === '16 mm')).toEqual([]);
    expect(unsourcedNumbers('It is 16 mm film.', (number) => number === '8 mm')).toHaveLength(1);
  });
});
