import { describe, expect, it } from 'vitest';
import {
  readPages,
  readSiteFile,
  readSiteFiles,
  samplePage,
  type BuiltPage,
} from './built-site.ts';

const isOutside = (address: string): boolean => /^\s*(?:[a-z][a-z0-9+.-]*:)?\/\//iu.test(address);

/** Addresses that the browser would fetch by itself from another host. */
function outsideRequests({ root }: BuiltPage): readonly string[] {
  const addresses = [
    ...root.querySelectorAll('[src]').map((element) => element.getAttribute('src')!),
    ...root.querySelectorAll('link[href]').map((element) => element.getAttribute('href')!),
    ...root.querySelectorAll('[poster]').map((element) => element.getAttribute('poster')!),
    ...root.querySelectorAll('object[data]').map((element) => element.getAttribute('data')!),
    ...root.querySelectorAll('form[action]').map((element) => element.getAttribute('action')!),
    ...root
      .querySelectorAll('use, image')
      .map((element) => element.getAttribute('href') ?? element.getAttribute('xlink:href') ?? ''),
    ...root.querySelectorAll('[srcset]').flatMap((element) =>
      element
        .getAttribute('srcset')!
        .split(',')
        .map((part) => part.trim()),
    ),
  ];
  const hints = root
    .querySelectorAll('link[rel~="preconnect"], link[rel~="dns-prefetch"], [ping]')
    .map((element) => `hint ${element.toString().slice(0, 80)}`);
  return [...addresses.filter(isOutside), ...hints];
}

/** Addresses of other hosts in a style sheet. */
function outsideInStyles(css: string): readonly string[] {
  return [...css.matchAll(/(?:url\(|@import\s+)\s*["']?([^"')\s;]+)/gu)]
    .map(([, address]) => address!)
    .filter(isOutside);
}

/** Links that lead a reader away from the book. */
function outgoingLinks({ root }: BuiltPage): readonly string[] {
  return root
    .querySelectorAll('a[href]')
    .map((element) => element.getAttribute('href')!)
    .filter(isOutside);
}

/** Only the list of sources sends readers elsewhere. */
const SOURCES = '/trainee/sources/';

describe('the site', () => {
  const pages = readPages();

  it.each(pages)('fetches nothing from elsewhere on $address', (page) => {
    expect(outsideRequests(page)).toEqual([]);
  });

  it('fetches nothing from elsewhere in its style sheets', () => {
    const sheets = readSiteFiles().filter((path) => path.endsWith('.css'));
    expect(sheets.length).toBeGreaterThan(0);
    const found = sheets.flatMap((path) => outsideInStyles(readSiteFile(path).toString('utf8')));
    expect(found).toEqual([]);
  });

  it.each(pages.filter(({ address }) => address !== SOURCES))(
    'sends no reader away from $address',
    (page) => {
      expect(outgoingLinks(page)).toEqual([]);
    },
  );

  it.each([
    '<img src="https://a.example/b.png" alt="">',
    '<img src="//a.example/b.png" alt="">',
    '<script src="http://a.example/b.js"></script>',
    '<link rel="stylesheet" href="https://a.example/b.css">',
    '<iframe src="https://a.example/"></iframe>',
    '<img srcset="https://a.example/b.png 2x" alt="">',
    '<form action="https://a.example/"></form>',
    '<link rel="preconnect" href="/">',
  ])('would be caught fetching: %s', (body) => {
    expect(outsideRequests(samplePage(body))).toHaveLength(1);
  });

  it('would be caught fetching from a style sheet and linking away', () => {
    expect(
      outsideInStyles("@import 'https://a.example/b.css'; p{background:url(//c.example)}"),
    ).toHaveLength(2);
    expect(outsideInStyles('p{background:url(/a.svg)}')).toEqual([]);
    const page = samplePage('<a href="https://a.example/">A</a><a href="/b/">B</a>');
    expect(outgoingLinks(page)).toEqual(['https://a.example/']);
    expect(outsideRequests(page)).toEqual([]);
  });
});
