import { describe, expect, it } from 'vitest';
import { renderFormula } from '../../src/components/render-formula.ts';
import { componentUses } from './mdx-blocks.ts';
import { readChapters } from './read-content.ts';

const formulas = readChapters().flatMap(({ path, body }) =>
  componentUses(body)
    .filter(({ name }) => name === 'Formula')
    .map(({ attributes, line }) => ({ path, line, tex: attributes['tex'] ?? '' })),
);

describe('the formulas', () => {
  it('are there to be read', () => {
    expect(formulas.length).toBeGreaterThan(0);
  });

  it.each(formulas)('$tex renders', ({ tex }) => {
    expect(renderFormula(tex, true)).toContain('<math');
  });

  it('become MathML without script or style', () => {
    for (const display of [true, false]) {
      const html = renderFormula(String.raw`F = f \times n \,,\; T = \frac{k}{F}`, display);
      expect(html).toContain('<mfrac>');
      expect(html).not.toMatch(/\sstyle=|<script|<svg/u);
      expect(html.includes('display="block"')).toBe(display);
    }
  });

  it.each([
    ['an unknown command', String.raw`\nosuch{1}`],
    ['an open brace', String.raw`\frac{1}{2`],
    ['a missing argument', String.raw`\frac{1}`],
    ['a double superscript', 'a^b^c'],
    ['a letter that TeX does not know', 'F = é'],
  ])('stop the build when one has %s', (_what, tex) => {
    expect(() => renderFormula(tex, true)).toThrow(/KaTeX|LaTeX/u);
  });
});
