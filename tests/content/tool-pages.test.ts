import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pageHead, TOOL_PAGES, toolPages, type ToolPageId } from '../../src/book/tool-pages.ts';
import { readFiles } from '../walls/source-files.ts';

const pages = readFiles('src/pages', ['.astro']);

/** The file behind an address. */
const fileOf = (href: string): string | undefined =>
  [`src/pages${href.replace(/\/$/u, '')}.astro`, `src/pages${href}index.astro`].find(existsSync);

describe('the pages that are no chapters', () => {
  it.each(Object.entries(TOOL_PAGES))(
    '%s takes its title and description from the list',
    (id, page) => {
      const file = fileOf(page.href);
      const source = pages.find(({ path }) => path === file)?.text ?? '';
      expect(source).toContain(`{...pageHead('${id}')}`);
      expect(source).not.toMatch(/<Page[^>]*(?:title|description)=/u);
      expect(source).toContain(`<h1>${pageHead(id as ToolPageId).title}</h1>`);
    },
  );

  it('are all on the list, but for the front and the page for missing addresses', () => {
    const listed = toolPages.map(({ href }) => fileOf(href));
    const others = pages.map(({ path }) => path).filter((path) => !listed.includes(path));
    expect(others.sort()).toEqual([
      'src/pages/404.astro',
      'src/pages/[part]/[chapter].astro',
      'src/pages/index.astro',
    ]);
  });

  it('have names and descriptions of their own', () => {
    expect(new Set(toolPages.map(({ name }) => name)).size).toBe(toolPages.length);
    expect(new Set(toolPages.map(({ description }) => description)).size).toBe(toolPages.length);
  });
});
