import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { siteFolder } from '../site/built-site.ts';
import { serveSite } from '../tools/site-server.ts';
import { noteShifts, notedShifts } from './sweep/layout.ts';

// A page comes in pieces on a slow line, and a browser shows what it has. Nothing that is shown may move
// when the rest comes.

const PAUSE_MILLISECONDS = 400;
const ENDS = ['</nav>', '</form>'] as const;

for (const address of ['/reel/condition/', '/search/']) {
  test(`the head of ${address} stands still while it comes @phone`, async ({ page }) => {
    const html = readFileSync(join(siteFolder, address, 'index.html'), 'utf8');
    const cuts = ENDS.map((end) => html.indexOf(end) + end.length);
    const pieces = [0, ...cuts].map((from, place) => html.slice(from, cuts[place] ?? html.length));
    const host = await serveSite({
      folder: siteFolder,
      answers: (request, response) => {
        if (request.url !== address) return false;
        response.writeHead(200, { 'content-type': 'text/html; charset=utf-8' });
        pieces.forEach((piece, place) => {
          setTimeout(() => {
            if (place < pieces.length - 1) response.write(piece);
            else response.end(piece);
          }, place * PAUSE_MILLISECONDS);
        });
        return true;
      },
    });
    await noteShifts(page);
    await page.goto(`${host.origin}${address}`, { waitUntil: 'load' });
    await page.waitForLoadState('networkidle');
    expect(await notedShifts(page)).toEqual([]);
    await host.stop();
  });
}
