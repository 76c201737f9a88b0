import { expect, test } from '@playwright/test';
import { loadWorksheets } from '../bench/parts/load-worksheets.ts';
import { readPages, readSiteFile } from '../site/built-site.ts';
import { wakeForms } from './live-forms.ts';
import { weighPage } from '../site/page-weight.ts';
import { wantedChunks } from '../site/wanted-chunks.ts';

// The byte budgets are computed from the files of the build. This checks the computation: no page
// may load a script that it has not counted.
const pages = readPages().filter(({ html }) => html.includes('<worksheet-form'));

for (const page of pages) {
  test(`${page.address} loads no script that its budget leaves out`, async ({
    page: tab,
    baseURL,
  }) => {
    const loaded = new Set<string>();
    tab.on('response', (response) => {
      const path = response.url().replace(`${baseURL ?? ''}/`, '');
      if (response.request().resourceType() === 'script') loaded.add(path);
    });
    await tab.goto(page.address);
    await wakeForms(tab);
    await tab.waitForLoadState('networkidle');
    const counted = new Set(
      wantedChunks(page, await loadWorksheets()).flatMap(
        (wanted) => weighPage(page, readSiteFile, wanted).scriptPaths,
      ),
    );
    expect(loaded.size).toBeGreaterThan(2);
    expect([...loaded].filter((path) => !counted.has(path))).toEqual([]);
  });
}
