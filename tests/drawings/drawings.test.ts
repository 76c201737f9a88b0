import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse as parseYaml } from 'yaml';
import { z } from 'astro/zod';
import { describe, expect, test } from 'vitest';
import { DRAWINGS } from '../../src/drawings/drawings.ts';
import { keysOf } from '../../src/drawings/kit/drawing.ts';
import { filmLine } from '../../src/drawings/kit/film-marks.ts';
import { renderDrawing } from '../../src/drawings/kit/render.ts';
import { projectFolder } from '../walls/source-files.ts';
import {
  arrowFaults,
  filmFaults,
  leaderFaults,
  mirrorFaults,
  nameFaults,
  namesShown,
} from './drawing-faults.ts';

const tokenSheets = ['tokens', 'drawing-tokens'].map((name) =>
  readFileSync(join(projectFolder, `src/styles/${name}.css`), 'utf8'),
);

const glossary = z
  .array(z.looseObject({ id: z.string() }))
  .parse(parseYaml(readFileSync(join(projectFolder, 'content/glossary.yaml'), 'utf8')));
const terms = new Set(glossary.map(({ id }) => id));

describe.each(DRAWINGS)('the drawing $id', (drawing) => {
  const svg = renderDrawing(drawing, tokenSheets);

  test('has a title, and says to who does not see it what is to be seen', () => {
    expect(drawing.title.length).toBeGreaterThan(10);
    expect(drawing.description.length).toBeGreaterThan(60);
    expect(svg).toContain(`<title id="title">${drawing.title.replaceAll('&', '&amp;')}</title>`);
    expect(svg).toContain('<desc id="description">');
    expect(svg).toContain('aria-labelledby="title description"');
  });

  test.each(['wide', 'narrow'] as const)('keeps its names apart when it is %s', (size) => {
    expect(namesShown(svg, size).length).toBeGreaterThan(0);
    expect(nameFaults(drawing, svg, size)).toEqual([]);
  });

  test('has leaders that cross neither film nor names nor each other', () => {
    expect(leaderFaults(drawing, svg)).toEqual([]);
  });

  test('lays film on tangents, round every wheel, with arrows that agree', () => {
    expect(filmFaults(drawing)).toEqual([]);
    expect(arrowFaults(drawing)).toEqual([]);
    const drawn = drawing.paths.filter(
      (path) => svg.includes(filmLine(path)) || svg.includes(filmLine(path, 'v')),
    );
    expect(drawn).toHaveLength(drawing.paths.length);
  });

  test('turns rays by equal angles', () => {
    expect(mirrorFaults(drawing)).toEqual([]);
  });

  test('names terms that the glossary has, each name by a letter or number of its own', () => {
    for (const { term, text } of drawing.labels) {
      if (term !== undefined) expect(terms, `${drawing.id}: ${text}`).toContain(term);
    }
    const keys = keysOf(drawing.labels);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).not.toContain('?');
  });

  test('takes its colours from the tokens alone', () => {
    const drawn = svg.slice(svg.indexOf('</style>'));
    expect(drawn).not.toMatch(/#[\da-f]{3}|rgb|style=|fill=|stroke=/u);
    expect(svg).toMatch(/--ink: light-dark\(/u);
    expect(svg).toMatch(/--light: light-dark\(/u);
    expect(svg).toContain('prefers-contrast:more');
  });
});

describe('the drawings together', () => {
  test('are all in the list, one file each, under names of their own', () => {
    const files = readdirSync(join(projectFolder, 'src/drawings'))
      .filter((name) => name.endsWith('.ts') && name !== 'drawings.ts')
      .map((name) => name.replace('.ts', ''));
    const ids = DRAWINGS.map(({ id }) => id);
    expect(ids.toSorted()).toEqual(files.toSorted());
    expect(new Set(DRAWINGS.map(({ title }) => title)).size).toBe(ids.length);
    expect(existsSync(join(projectFolder, 'src/drawings/kit'))).toBe(true);
  });
});
