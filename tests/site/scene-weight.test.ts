import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'astro/zod';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../walls/source-files.ts';
import { readPages, readSiteFile, readSiteFiles } from './built-site.ts';
import { sentBytes } from './page-weight.ts';

const { sceneBudgets } = z
  .object({
    sceneBudgets: z.strictObject({
      /** The worker that draws film frames, gzipped. */
      workerBytes: z.number(),
      /** What draws pictures, without the core, gzipped: loaded at the first touch. */
      viewerBytes: z.number(),
      /** Tools, clock and words, gzipped: loaded at the press that asks for them. */
      panelBytes: z.number(),
      /** Stills made at build, by width. */
      still640Bytes: z.number(),
      still320Bytes: z.number(),
    }),
  })
  .parse(JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')));

/** Gzipped weight of the scripts whose names start so. */
function weightOf(start: string): number {
  const found = readSiteFiles().filter(
    (path) => path.startsWith(`assets/${start}.`) && path.endsWith('.js'),
  );
  expect(found, start).toHaveLength(1);
  return sentBytes(found[0]!, readSiteFile(found[0]!));
}

describe('a scene', () => {
  it('weighs what it may: worker and viewer', () => {
    expect(weightOf('film-worker')).toBeLessThanOrEqual(sceneBudgets.workerBytes);
    const viewer = weightOf('scene') + weightOf('hydrate-scene');
    expect(viewer).toBeLessThanOrEqual(sceneBudgets.viewerBytes);
    expect(weightOf('panel')).toBeLessThanOrEqual(sceneBudgets.panelBytes);
  });

  const scenes = readPages().flatMap(({ address, root }) =>
    root.querySelectorAll('scene-view:not([data-widths])').map((element) => ({ address, element })),
  );

  it('stands on the front page and in chapters', () => {
    expect(scenes.map(({ address }) => address)).toContain('/');
    expect(scenes.length).toBeGreaterThan(1);
  });

  it.each(scenes)('on $address has light stills and words for what differs', ({ element }) => {
    const image = element.querySelector('img')!;
    const stills = image.getAttribute('srcset')!.split(', ');
    expect(stills).toHaveLength(2);
    for (const still of stills) {
      const [address, width] = still.split(' ');
      const bytes = readSiteFile(address!.slice(1)).length;
      expect(bytes).toBeGreaterThan(1000);
      expect(bytes, address).toBeLessThanOrEqual(
        width === '640w' ? sceneBudgets.still640Bytes : sceneBudgets.still320Bytes,
      );
    }
    expect(image.getAttribute('alt')).toMatch(/light|Faded|Dust|\w+\.$/u);
    expect(image.getAttribute('width')).toBe('640');
  });

  it('loads nothing of itself before it is touched', () => {
    for (const { root } of readPages()) {
      const scripts = root
        .querySelectorAll('script[src]')
        .map((script) => script.getAttribute('src'));
      expect(scripts.filter((src) => /scene|panel|film-worker/u.test(src ?? ''))).toEqual([]);
    }
  });
});
