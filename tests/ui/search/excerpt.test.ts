import { describe, expect, it } from 'vitest';
import { stretchesOf } from '../../../src/ui/search/search-index.ts';

describe('an excerpt', () => {
  it('is split at its marks', () => {
    expect(stretchesOf('has a <mark>ghost</mark> beside <mark>it</mark>')).toEqual([
      { text: 'has a ', marked: false },
      { text: 'ghost', marked: true },
      { text: ' beside ', marked: false },
      { text: 'it', marked: true },
    ]);
  });

  it('is shown as text, whatever stands in it', () => {
    const shown = stretchesOf('a &lt;b&gt; &amp;amp; <mark>&quot;c&quot;</mark><img src=x>');
    expect(shown.map(({ text }) => text).join('')).toBe('a <b> &amp; "c"<img src=x>');
  });

  it('may be empty', () => {
    expect(stretchesOf('')).toEqual([]);
  });
});
