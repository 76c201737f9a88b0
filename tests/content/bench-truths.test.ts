import { describe, expect, it } from 'vitest';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { readFiles } from '../walls/source-files.ts';

// Things that the book once had wrong about the work itself, where no number can catch them.

const chapter = (path: string): string =>
  readFiles('content/chapters', ['.mdx']).find((file) => file.path.endsWith(path))?.text ?? '';

describe('base, bending and shrinkage', () => {
  it('are taken from the film and not from the leader, in chapter and sheets', () => {
    const condition = chapter('02-condition.mdx');
    for (const step of ['Find the', 'Bend the film itself', 'Measure the shrinkage at the head']) {
      const line = condition.split('\n').find((text) => text.includes(step)) ?? '';
      expect(line, step).toMatch(/past the leader|not on the leader/u);
    }
    expect(chapter('01-gauges.mdx')).toMatch(/leader/u);
    const { inputs } = findWorksheet('condition-triage');
    for (const key of ['base', 'brittleness']) {
      expect(inputs[key]?.help, key).toMatch(/leader/u);
      expect(inputs[key]?.help, key).not.toMatch(/^Try the leader/u);
    }
  });
});

describe('cleaning', () => {
  it('goes dry before wet: air, rollers, plush, and only then a moist plush', () => {
    const texts = [chapter('02-condition.mdx'), chapter('03-safety.mdx')].join('\n');
    expect(texts).toMatch(/roller/iu);
    expect(texts).toMatch(/plush/iu);
    expect(texts).toMatch(/stri(?:pe|ped)[^.]*dry|dry[^.]*stri(?:pe|ped)/iu);
  });
});

describe('a match', () => {
  it('is proven with film in the gate, which loads the motor', () => {
    expect(chapter('03-measuring-speed.mdx')).toMatch(/film in the gate|with film/iu);
  });
});

describe('a formula', () => {
  it('stands beside the meaning of its letters', () => {
    let looked = 0;
    const bare = readFiles('content/chapters', ['.mdx']).flatMap(({ path, text }) =>
      [...text.matchAll(/^<Formula tex="[^"]*" \/>$/gmu)].flatMap((found) => {
        looked += 1;
        const around = text.slice(Math.max(0, found.index - 500), found.index + 900);
        return /\*[A-Za-zα-ω]\*|In words|\*[A-Za-z]<sub>/u.test(around)
          ? []
          : [`${path}: ${found[0]}`];
      }),
    );
    expect(bare).toEqual([]);
    expect(looked).toBeGreaterThan(5);
  });
});

describe('the English of the book', () => {
  it.each([/\breckon/iu, /\bwade\b/iu, /shall sound/iu, /what lacks/iu, /does not hold for/iu])(
    'does without %s',
    (phrase) => {
      const files = [
        ...readFiles('content', ['.mdx', '.yaml']),
        ...readFiles('src/worksheets', ['.ts']),
      ];
      expect(files.length).toBeGreaterThan(100);
      const found = files
        .filter(({ path }) => !path.endsWith('editions.yaml') && !path.endsWith('sources.yaml'))
        .flatMap(({ path, text }) =>
          text
            .split('\n')
            .filter((line) => phrase.test(line))
            .map((line) => `${path}: ${line.trim().slice(0, 80)}`),
        );
      expect(found).toEqual([]);
    },
  );
});
