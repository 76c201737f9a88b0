import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { flatStyles } from '../../src/build/previews.mjs';
import { inFolder } from '../../src/build/subfolder.mjs';
import { readPages, readSiteFiles, type BuiltPage } from './built-site.ts';
import { FOLDER, HOST, readFolderFile, readFolderFiles, readFolderPages } from './folder-site.ts';

// The site in a folder of a host, with its address known.

const files = readFolderFiles();
const pages = readFolderPages();
const paths: ReadonlySet<string> = new Set(
  files.map((path) => `${FOLDER}${path.replace(/(^|\/)index\.html$/u, '$1')}`),
);

/** Addresses of a page that lead out of the folder, or to nothing in it. */
function strays({ address, root }: BuiltPage): readonly string[] {
  return root
    .querySelectorAll('[href], [src], [action]')
    .filter((element) => element.getAttribute('rel') !== 'canonical')
    .map((element) => ['href', 'src', 'action'].map((name) => element.getAttribute(name)))
    .map((values) => values.find((value) => value !== undefined) ?? '')
    .filter((link) => !/^https?:/u.test(link))
    .filter((link) => {
      const target = new URL(link, `${HOST}${FOLDER.slice(0, -1)}${address}`);
      return !paths.has(decodeURIComponent(target.pathname));
    });
}

describe('the site in a folder of a host', () => {
  it.each(pages)('keeps every address of $address inside', (page) => {
    expect(page.root.querySelectorAll('[href]').length).toBeGreaterThan(5);
    expect(strays(page)).toEqual([]);
  });

  it('keeps the addresses of its styles and of its manifest inside', () => {
    const styles = files.filter((path) => path.endsWith('.css'));
    const named = styles.flatMap((path) =>
      [
        ...readFolderFile(path)
          .toString('utf8')
          .matchAll(/url\(["']?([^"')]+)/gu),
      ].map(([, link]) => link!),
    );
    expect(named.length).toBeGreaterThan(1);
    expect(named.filter((link) => !paths.has(link))).toEqual([]);
    const manifest = readFolderFile('manifest.webmanifest').toString('utf8');
    const addresses = [...manifest.matchAll(/": "(\/[^"]*)"/gu)].map(([, link]) => link!);
    expect(addresses.length).toBeGreaterThan(8);
    expect(addresses.filter((link) => !paths.has(link))).toEqual([]);
  });

  it('is kept for use without network whole, without what only other sites ask for', () => {
    const worker = readFolderFile('service-worker.js').toString('utf8');
    const kept = [...worker.matchAll(/url:[`"']([^`"']+)[`"'],revision/gu)].map(([, url]) => url!);
    const wanted = [...paths].filter(
      (path) => !/\/(?:service-worker\.js|sitemap\.xml|previews\/.*|recordings\/.*)$/u.test(path),
    );
    expect(kept.toSorted()).toEqual(wanted.toSorted());
  });

  it('puts the folder before an address once, also where a folder of the book has its name', () => {
    const known = new Set(['/', '/gate/matching/', '/assets/a.css']);
    const moved = (address: string): string => inFolder('/gate/', address, known);
    expect(moved('/')).toBe('/gate/');
    expect(moved('/gate/')).toBe('/gate/');
    expect(moved('/gate')).toBe('/gate');
    expect(moved('/gate/matching/?w=a#b')).toBe('/gate/gate/matching/?w=a#b');
    expect(moved('/gate/gate/matching/')).toBe('/gate/gate/matching/');
    expect(moved('/assets/a.css')).toBe('/gate/assets/a.css');
    expect(moved('/gate/assets/a.css')).toBe('/gate/assets/a.css');
  });

  it('would be caught with an address outside', () => {
    const [first] = pages;
    first!.root.querySelector('main')?.insertAdjacentHTML('beforeend', '<a href="/bench/">A</a>');
    expect(strays(first!)).toEqual(['/bench/']);
  });
});

describe('the site whose address is known', () => {
  const published = pages.filter(({ path }) => path !== '404.html');
  const content = ({ root }: BuiltPage, property: string): string =>
    root.querySelector(`meta[property="${property}"]`)?.getAttribute('content') ?? '';

  it.each(published)('says the whole address of $address', (page) => {
    const whole = `${HOST}${FOLDER.slice(0, -1)}${page.address}`;
    expect(page.root.querySelector('link[rel="canonical"]')?.getAttribute('href')).toBe(whole);
    expect(content(page, 'og:url')).toBe(whole);
    expect(content(page, 'og:title')).toBe(
      page.root.querySelector('h1')?.textContent.replaceAll(/\s+/gu, ' ').trim(),
    );
    expect(content(page, 'og:description').length).toBeGreaterThan(10);
  });

  it('lists every page in its sitemap, each once', () => {
    const sitemap = readFolderFile('sitemap.xml').toString('utf8');
    const listed = [...sitemap.matchAll(/<loc>([^<]+)<\/loc>/gu)].map(([, page]) => page!);
    const whole = published.map(({ address }) => `${HOST}${FOLDER.slice(0, -1)}${address}`);
    expect(listed.toSorted()).toEqual(whole.toSorted());
  });

  it('does not call the page for missing addresses a page of the book', () => {
    const missing = pages.find(({ path }) => path === '404.html');
    expect(missing?.root.querySelectorAll('link[rel="canonical"], meta[property]')).toEqual([]);
  });

  const chapters = published.filter(({ root }) => root.querySelector('article.chapter') !== null);

  it.each(chapters)('has a small preview picture of $address, with its drawing', async (page) => {
    const address = content(page, 'og:image');
    expect(address.startsWith(`${HOST}${FOLDER}`)).toBe(true);
    const picture = readFolderFile(address.slice(`${HOST}${FOLDER}`.length));
    expect(picture.length).toBeLessThan(60_000);
    const { width, height } = await sharp(picture).metadata();
    expect([width, height]).toEqual([1200, 630]);
    if (page.root.querySelector('.prose svg.pic-svg') === null) return;
    // Where a drawing stands there is more than paper, and no black shape: its colours were understood.
    const { data } = await sharp(picture)
      .extract({ left: 580, top: 20, width: 600, height: 600 })
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const pixels = Array.from({ length: data.length / 3 }, (_, at) => at * 3);
    const paper = pixels.filter((at) => data[at] === 0xfb && data[at + 1] === 0xfb).length;
    const black = pixels.filter((at) => data[at]! + data[at + 1]! + data[at + 2]! < 30).length;
    expect(1 - paper / pixels.length).toBeGreaterThan(0.02);
    expect(black / pixels.length).toBeLessThan(0.01);
  });

  it('draws each chapter another preview', () => {
    const pictures = chapters.map((page) =>
      readFolderFile(content(page, 'og:image').slice(`${HOST}${FOLDER}`.length)).toString('base64'),
    );
    expect(pictures.length).toBeGreaterThan(15);
    expect(new Set(pictures).size).toBe(pictures.length);
  });

  it('resolves tokens and leaves out what only a browser reads', () => {
    const flat = flatStyles(
      '.pic { --pic-ground: var(--paper); } .a { fill: var(--pic-ground); }' +
        '@container (inline-size < 1px) { .a { fill: red; } } .b { stroke: var(--ink); }',
      ':root { --paper: light-dark(#fff, #000); --ink: #123456; }',
    );
    expect(flat).toContain('.a { fill: #fff; }');
    expect(flat).toContain('.b { stroke: #123456; }');
    expect(flat).not.toMatch(/red|@|var\(/u);
    expect(() => flatStyles('.a { fill: var(--lost); }', '')).toThrow('--lost');
  });
});

describe('the site whose address is not known', () => {
  it('claims none', () => {
    expect(readSiteFiles().filter((path) => /^(?:sitemap|previews)/u.test(path))).toEqual([]);
    const claims = readPages().flatMap(({ root }) =>
      root.querySelectorAll('link[rel="canonical"], meta[property]'),
    );
    expect(claims).toEqual([]);
  });
});
