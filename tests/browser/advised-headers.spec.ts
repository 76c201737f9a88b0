import { expect, test as base } from '@playwright/test';
import { siteFolder } from '../site/built-site.ts';
import { advisedHeaders } from '../tools/advised-headers.ts';
import { serveSite, type SiteServer } from '../tools/site-server.ts';
import { visit } from './editions.ts';
import { turnTag } from './short-run.ts';
import { wakeForms } from './live-forms.ts';
import { listenTo } from './sweep/listen.ts';

// The site behind a host that does as README.md advises: every header, and text compressed.

const test = base.extend<{ host: SiteServer }>({
  // eslint-disable-next-line no-empty-pattern -- the runner reads what a fixture needs from the pattern
  host: async ({}, use) => {
    const host = await serveSite({
      folder: siteFolder,
      headersOf: advisedHeaders,
      compresses: true,
    });
    await use(host);
    await host.stop();
  },
});

for (const [index, path] of [
  '/',
  '/gate/matching/',
  '/bench/',
  '/search/?q=flicker',
  '/cards/',
  '/job-sheet/',
].entries()) {
  test(`${path} works with the advised headers${turnTag(index, 3)}`, async ({ page, host }) => {
    const heard = listenTo(page, path, host.origin);
    const response = await page.goto(`${host.origin}${path}`);
    const headers = response?.headers() ?? {};
    expect(headers).toMatchObject(advisedHeaders('/index.html'));
    expect(headers['content-encoding']).toBe('gzip');
    const meta = page.locator('meta[http-equiv="Content-Security-Policy"]');
    const own = (await meta.getAttribute('content')) ?? 'none';
    expect(headers['content-security-policy']).toBe(`${own}; frame-ancestors 'none'`);
    await wakeForms(page);
    await page.waitForLoadState('networkidle');
    if (path.startsWith('/search/')) await expect(page.locator('.hit-link').first()).toBeVisible();
    expect(heard.faults).toEqual([]);
  });
}

test('scripts and styles may be kept for a year, all else is asked for anew', async ({
  page,
  host,
}) => {
  const policies = new Map<string, string | undefined>();
  page.on('response', (response) => {
    policies.set(new URL(response.url()).pathname, response.headers()['cache-control']);
  });
  await page.goto(`${host.origin}/gate/matching/`);
  await page.waitForLoadState('networkidle');
  const kept = [...policies].filter(([, policy]) => policy?.includes('immutable') === true);
  expect(kept.length).toBeGreaterThan(2);
  // Fonts keep their names when they are cut to other characters: they are not among them.
  expect(kept.filter(([path]) => !/^\/assets\/.*\.[\w-]{8}\.(?:js|css|json)$/u.test(path))).toEqual(
    [],
  );
  const anew = [...policies].filter(([, policy]) => policy === 'no-cache').map(([path]) => path);
  expect(anew).toContain('/gate/matching/');
  expect(anew.filter((path) => path.endsWith('.woff2'))).not.toEqual([]);
});

test.describe('kept for use without network', () => {
  test.use({ serviceWorkers: 'allow' });
  test('the book is kept from such a host too', async ({ page, host }) => {
    await visit(page, host.origin);
    await host.stop();
    await page.goto(`${host.origin}/gate/matching/`);
    await expect(page.locator('h1')).toHaveText('Matching the exposure time');
  });
});

test('another site cannot show the book in a frame', async ({ page, host }) => {
  const framing = await serveSite({
    folder: siteFolder,
    answers: (_request, response) => {
      response.writeHead(200, { 'content-type': 'text/html' });
      response.end(`<iframe src="${host.origin}/bench/"></iframe>`);
      return true;
    },
  });
  const refused = page.waitForEvent('console', (message) =>
    message.text().includes('frame-ancestors'),
  );
  await page.goto(framing.origin);
  await refused;
  await framing.stop();
});
