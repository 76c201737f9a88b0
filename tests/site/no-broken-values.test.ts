import { describe, expect, it } from 'vitest';
import { readPages, samplePage, type BuiltPage } from './built-site.ts';

const BROKEN = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object \w+\]|\bnull\b|\{\w+(?:\.\w+)*\}/u;

/** Texts and attributes that print a value which is none. */
function brokenValues({ root }: BuiltPage): readonly string[] {
  const texts = root
    .querySelectorAll('body *')
    .filter(({ tagName }) => !['SCRIPT', 'STYLE', 'CODE', 'PRE', 'ANNOTATION'].includes(tagName))
    .flatMap((element) => [
      ...element.childNodes.filter(({ nodeType }) => nodeType === 3).map(({ text }) => text),
      ...Object.values(element.attributes),
    ]);
  return texts.filter((text) => BROKEN.test(text)).map((text) => text.trim().slice(0, 120));
}

describe('broken values', () => {
  it.each(readPages())('are not printed on $address', (page) => {
    expect(page.root.querySelector('main')?.text.trim()).not.toBe('');
    expect(brokenValues(page)).toEqual([]);
  });

  it.each([
    '<p>NaN Hz</p>',
    '<p title="undefined">A</p>',
    '<p>[object Object]</p>',
    '<p>{a.b}</p>',
  ])('would be caught: %s', (body) => {
    expect(brokenValues(samplePage(body))).toHaveLength(1);
  });

  it('are not meant where the words are ordinary ones', () => {
    expect(brokenValues(samplePage('<p>An infinity of reels is annulled.</p>'))).toEqual([]);
  });
});
