import { describe, expect, it } from 'vitest';
import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';

const stepsOf = (entries: Entries): readonly string[] =>
  evaluate(findWorksheet('picture-way'), entries).working!().map(({ words }) => words);

describe('the working of the way of the picture', () => {
  it('says that the movement contradicts the marks, where it does', () => {
    // Straight into the gate, film that is threaded right stands on its head and is mirrored.
    const right = { path: 'gate', rows: 'single', heads: 'down', lettering: 'mirrored' };
    const contradicted = stepsOf({ ...right, motion: 'backwards' });
    expect(contradicted.at(-1)).toBe(
      'Film threaded so runs forwards, and what was seen runs backwards: one of the two was seen wrongly.',
    );
    for (const motion of ['forwards', 'not-looked']) {
      expect(stepsOf({ ...right, motion }).join(' ')).not.toContain('seen wrongly');
    }
  });

  it('says so of film whose tail went in first as well', () => {
    const tail = { path: 'gate', rows: 'symmetric', heads: 'up', lettering: 'right' };
    expect(stepsOf({ ...tail, motion: 'forwards' }).at(-1)).toContain(
      'runs backwards, and what was seen runs forwards',
    );
    expect(stepsOf({ ...tail, motion: 'backwards' }).join(' ')).not.toContain('seen wrongly');
  });
});
