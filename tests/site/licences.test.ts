import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packageOf } from '../../src/build/licences.mjs';
import { edgesOf } from '../walls/imports.ts';
import { projectFolder, readSource } from '../walls/source-files.ts';
import { readPages } from './built-site.ts';

const collapsed = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim();

/** Packages that code for the reader's browser imports by name, read from the source alone. */
function importedForReaders(): readonly string[] {
  const forReaders = readSource().filter(({ path }) =>
    /^src\/(?:core|worksheets|pictures|ui|clip|scene|practice|offline|layouts)\//u.test(path),
  );
  const edges = edgesOf(forReaders).filter(
    ({ to, kind }) => kind !== 'type' && !/^(?:src\/|node:|astro)/u.test(to),
  );
  const names = edges.map(({ to }) => /^(?:@[^/]+\/)?[^/]+/u.exec(to)?.[0] ?? '');
  return [...new Set(names)].sort();
}

describe('the page of licences', () => {
  const pages = readPages();
  const page = pages.find(({ address }) => address === '/licences/');
  const listed = (page?.root.querySelectorAll('.licence') ?? []).map((section) => ({
    heading: collapsed(section.querySelector('h2')?.text ?? ''),
    text: collapsed(section.querySelector('pre')?.textContent ?? ''),
  }));

  it('is linked from the foot of every page', () => {
    for (const { address, root } of pages) {
      expect(root.querySelector('footer a[href="/licences/"]'), address).not.toBeNull();
    }
  });

  it('holds the licence of the book itself', () => {
    const own = readFileSync(join(projectFolder, 'LICENSE'), 'utf8');
    expect(listed[0]?.text).toBe(collapsed(own));
  });

  it('names every package that code for readers imports, and the faces', () => {
    const imported = importedForReaders();
    expect(imported).toEqual(
      expect.arrayContaining(['@fontsource/source-serif-4', 'minisearch', 'preact', 'serwist']),
    );
    for (const name of imported) {
      expect(
        listed.filter(({ heading }) => heading.startsWith(`${name} `)),
        name,
      ).toHaveLength(1);
    }
  });

  it.each(listed.slice(1))('has version, licence and text of $heading', ({ heading, text }) => {
    const [, name, version, licence] = /^(\S+) (\S+), (.+)$/u.exec(heading) ?? [];
    const folder = join(projectFolder, 'node_modules', name ?? 'none');
    const described = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as object;
    expect(described).toMatchObject({ version, license: licence });
    const file = readdirSync(folder).find((entry) => /^licen[cs]e(?:\.|$)/iu.test(entry));
    const whole = collapsed(readFileSync(join(folder, file ?? 'none'), 'utf8'));
    expect(text.length).toBeGreaterThan(700);
    expect(whole.startsWith(text.slice(0, 700))).toBe(true);
    expect(text).toMatch(/permission|redistribut|grants/iu);
  });

  it('knows the package of a module', () => {
    expect(packageOf('/a/node_modules/preact/dist/preact.mjs')).toBe('preact');
    expect(packageOf('/a/node_modules/b/node_modules/@c/d/e.js?url')).toBe('@c/d');
    expect(packageOf(String.raw`C:\a\node_modules\idb\build\index.js`)).toBe('idb');
    expect(packageOf('\0vite/preload-helper.js')).toBe('vite');
    expect(packageOf('\0rolldown/runtime.js')).toBe('rolldown');
    expect(packageOf('/a/src/core/beat.ts')).toBeUndefined();
  });
});
