import { describe, expect, it } from 'vitest';
import { keepUnitsWhole } from '../../src/build/unbroken-units.mjs';
import { makePage, readPages } from './built-site.ts';

const kept = (unit: string): string => `<span class="unbroken">${unit}</span>`;

describe('a unit with a slash', () => {
  it('stays in one line wherever it is said', () => {
    expect(keepUnitsWhole('<p>At 18 frames/s, not <b>24&nbsp;frames/s</b>.</p>')).toBe(
      `<p>At 18 ${kept('frames/s')}, not <b>24&nbsp;${kept('frames/s')}</b>.</p>`,
    );
    expect(keepUnitsWhole('<td>5 mg/m³ (ml/m³)</td>')).toBe(
      `<td>5 ${kept('mg/m³')} (${kept('ml/m³')})</td>`,
    );
  });

  it.each([
    '<p title="18 frames/s">reel/gauges, and/or, ISO/R 26, 1/54 s, 24000/1001</p>',
    '<pre><code>rate in frames/s</code></pre>',
    '<p><span class="value">18 frames/s</span></p>',
    `<p>${kept('frames/s')}</p>`,
    '<worksheet-form><p>frames/s</p></worksheet-form>',
    '<svg><text>frames/s</text></svg>',
    '<p>https://books.example/mm/s/ and a.frames/s.html</p>',
    '<!-- frames/s --><select><option>frames/s</option></select>',
  ])('is not touched in %s', (html) => {
    expect(keepUnitsWhole(html)).toBe(html);
  });

  it('is kept whole on the built pages', () => {
    const pages = readPages();
    const count = pages.reduce(
      (sum, { root }) => sum + root.querySelectorAll('p .unbroken, li .unbroken').length,
      0,
    );
    expect(count).toBeGreaterThan(100);
    for (const { path, html, address } of pages) {
      // A copy: what is taken out below would be missing for other tests.
      const { root } = makePage(path, html);
      // A paragraph of a sheet is drawn by the sheet itself.
      for (const text of root.querySelectorAll('.prose > p, .prose > ul > li')) {
        for (const whole of text.querySelectorAll('.unbroken, .value')) whole.remove();
        expect(text.text, address).not.toMatch(/\bframes\/s\b/u);
      }
    }
  });
});
