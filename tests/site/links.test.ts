import { describe, expect, it } from 'vitest';
import { readPages, readSiteFiles, samplePage, type BuiltPage } from './built-site.ts';

/** Links and references inside the site that lead to no page, file or anchor. */
function brokenLinks(pages: readonly BuiltPage[], files: ReadonlySet<string>): readonly string[] {
  const anchors = new Map(
    pages.map(({ address, root }) => [
      address,
      new Set(root.querySelectorAll('[id]').map((element) => element.getAttribute('id')!)),
    ]),
  );
  return pages.flatMap(({ address, root }) =>
    root
      .querySelectorAll('[href], [src]')
      .map((element) => element.getAttribute('href') ?? element.getAttribute('src') ?? '')
      .flatMap((link) => {
        const base = `https://site.invalid${address}`;
        if (!URL.canParse(link, base)) return [`${address} → ${link} (not an address)`];
        const target = new URL(link, base);
        if (target.host !== 'site.invalid') return [];
        const path = decodeURIComponent(target.pathname);
        const ids = anchors.get(path);
        if (ids === undefined) {
          return files.has(path.slice(1)) ? [] : [`${address} → ${link} (no such page or file)`];
        }
        const anchor = decodeURIComponent(target.hash.slice(1));
        return anchor === '' || ids.has(anchor) ? [] : [`${address} → ${link} (no such anchor)`];
      }),
  );
}

/** Ids that stand twice on one page. */
function doubleIds(page: BuiltPage): readonly string[] {
  const ids = page.root.querySelectorAll('[id]').map((element) => element.getAttribute('id')!);
  return ids.filter((id, index) => ids.indexOf(id) !== index);
}

describe('links inside the site', () => {
  const pages = readPages();

  it('all lead to a page, a file or an anchor that exists', () => {
    const links = pages.flatMap(({ root }) => root.querySelectorAll('a[href]'));
    expect(links.length).toBeGreaterThan(10);
    expect(brokenLinks(pages, new Set(readSiteFiles()))).toEqual([]);
  });

  it.each(pages)('can rely on the anchors of $address, each there once', (page) => {
    expect(doubleIds(page)).toEqual([]);
  });

  it('would be caught leading nowhere', () => {
    const page = samplePage(
      '<h2 id="here">A</h2><h2 id="here">B</h2><a href="#here">1</a><a href="#there">2</a>' +
        '<a href="/sample/">3</a><a href="/gone/">4</a><a href="/sample">5</a>' +
        '<img src="/a.svg"><img src="/b.svg"><a href="https://example.org/x">6</a>',
    );
    expect(brokenLinks([page], new Set(['a.svg']))).toEqual([
      '/sample/ → #there (no such anchor)',
      '/sample/ → /gone/ (no such page or file)',
      '/sample/ → /sample (no such page or file)',
      '/sample/ → /b.svg (no such page or file)',
    ]);
    expect(doubleIds(page)).toEqual(['here']);
  });
});
