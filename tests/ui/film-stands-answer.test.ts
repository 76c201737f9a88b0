// What the sheet says of film that stands: where, or how short a stand it would not see.
import { describe, expect, it } from 'vitest';
import demoFilm from '../../src/ui/recording/demo-film.json';
import { filmAnswers } from '../../src/ui/recording/film-answers.ts';
import type { FilmReading } from '../../src/ui/recording/film-found.ts';
import { filmKind } from '../../src/ui/recording/film-kind.ts';
import { fillEntries } from '../../src/worksheets/machine/evaluate.ts';

const demo = demoFilm as unknown as FilmReading;
const { settings } = filmKind.fields.read(
  fillEntries(filmKind.fields.sheet.inputs, filmKind.demoEntries ?? {}),
);

const plain = (text: string | undefined): string => (text ?? '').replaceAll('\u00a0', ' ');

function said(list: Partial<FilmReading['list']>) {
  const { text, note, level } = filmAnswers(
    { ...demo, firstSeconds: 5, list: { ...demo.list, ...list } },
    settings!,
  ).find(({ label }) => label === 'Film that stands')!;
  return { text: plain(text), note: plain(note), level };
}

describe('film that stands', () => {
  it('is said to be none of the length that would be told', () => {
    expect(said({}).text).toBe('none of 0.5 s or longer');
    expect(said({ shortestStandSeconds: 2 }).text).toBe('none of 2 s or longer');
    expect(said({}).level).toBeUndefined();
  });

  it('is named by its times from the first camera frame', () => {
    const stands = [
      { fromSeconds: 6.5, toSeconds: 7.25 },
      { fromSeconds: 20, toSeconds: 22 },
    ];
    const answer = said({ stands });
    expect(answer.text).toBe('1.5 to 2.25 s, 15 to 17 s');
    expect(answer.level).toBe('care');
    expect(answer.note).toContain('shorter than 0.5 s');
    const many = Array.from({ length: 11 }, (_, at) => ({ fromSeconds: at, toSeconds: at + 1 }));
    expect(said({ stands: many }).text).toMatch(/, and 3 more$/u);
  });

  it('is not told where running film can look the same', () => {
    expect(said({ shortestStandSeconds: undefined }).text).toBe('not told');
  });
});
