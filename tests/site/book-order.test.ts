import { describe, expect, it } from 'vitest';
import { readChapters } from '../content/read-content.ts';
import { readPages, samplePage, type BuiltPage } from './built-site.ts';

const addresses = readChapters().map(({ id }) => `/${id}/`);
const pages = readPages();
const pageAt = (address: string): BuiltPage => {
  const page = pages.find((each) => each.address === address);
  if (page === undefined) throw new Error(`${address} was not built`);
  return page;
};

/** Where the links at the foot of a chapter lead: back and on. */
function turns({ root }: BuiltPage): readonly (string | undefined)[] {
  return ['prev', 'next'].map((rel) =>
    root.querySelector(`.turn a[rel="${rel}"]`)?.getAttribute('href'),
  );
}

/** Sections of a chapter that its outline does not list, or lists in another order or twice. */
function outlineFaults({ root }: BuiltPage): readonly string[] {
  const listed = root
    .querySelectorAll('.outline a')
    .map((link) => link.getAttribute('href')?.slice(1));
  const sections = root
    .querySelectorAll('.prose > h2')
    .map((heading) => heading.getAttribute('id'));
  return listed.join(' ') === sections.join(' ')
    ? []
    : [`outline: ${listed.join(', ')}; sections: ${sections.join(', ')}`];
}

/** Chapters in the order in which a page links to them. */
const chaptersLinked = ({ root }: BuiltPage): readonly string[] =>
  root
    .querySelectorAll('.contents ol a')
    .map((link) => link.getAttribute('href') ?? '')
    .filter((href) => addresses.includes(href));

describe('the order of the book', () => {
  it('leads from each chapter to the one before and the one after', () => {
    expect(addresses.length).toBeGreaterThan(15);
    expect(addresses.map((address) => turns(pageAt(address)))).toEqual(
      addresses.map((_, index) => [addresses[index - 1], addresses[index + 1]]),
    );
  });

  it.each(['/', '/contents/'])('lists every chapter once, in order, on %s', (address) => {
    expect(chaptersLinked(pageAt(address))).toEqual(addresses);
  });

  it.each(addresses)('lists the sections of %s in its outline', (address) => {
    expect(outlineFaults(pageAt(address))).toEqual([]);
  });

  it('numbers the chapters from 1', () => {
    const numbers = addresses.map((address) =>
      Number(pageAt(address).root.querySelector('.chapter-number')?.text.trim()),
    );
    expect(numbers).toEqual(addresses.map((_, index) => index + 1));
  });

  it('leads the three readers from the front page to the first chapter, the search and the customer', () => {
    const ways = pageAt('/')
      .root.querySelectorAll('.way-main')
      .map((link) => link.getAttribute('href'));
    expect(ways).toEqual([addresses[0], '/search/', '/your-film/']);
  });

  it('would be caught with an outline that lacks a section', () => {
    const page = samplePage(
      '<nav class="outline"><a href="#a">A</a></nav><div class="prose"><h2 id="a">A</h2><h2 id="b">B</h2></div>',
    );
    expect(outlineFaults(page)).toHaveLength(1);
    expect(turns(samplePage('<nav class="turn"><a rel="next" href="/x/">X</a></nav>'))).toEqual([
      undefined,
      '/x/',
    ]);
  });
});
