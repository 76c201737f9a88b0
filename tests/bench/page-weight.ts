// Bytes of every built page, as sent: gzipped texts, fonts as they are.
import { readPages, readSiteFile, readSiteFiles } from '../site/built-site.ts';
import { sentBytes, weighPage } from '../site/page-weight.ts';
import { wantedChunks } from '../site/wanted-chunks.ts';
import { loadWorksheets } from './parts/load-worksheets.ts';

const worksheets = await loadWorksheets();
const kilobytes = (bytes: number): string => (bytes / 1000).toFixed(1);

const rows = readPages()
  .map((page) => {
    const weights = wantedChunks(page, worksheets).map((wanted) =>
      weighPage(page, readSiteFile, wanted),
    );
    return {
      address: page.address,
      html: sentBytes(page.path, readSiteFile(page.path)),
      firstLoad: Math.max(...weights.map(({ firstLoad }) => firstLoad)),
      scripts: Math.max(...weights.map(({ scripts }) => scripts)),
    };
  })
  .sort((a, b) => b.firstLoad - a.firstLoad);

const line = (...cells: readonly string[]): string =>
  cells.map((cell, column) => (column === 0 ? cell.padEnd(36) : cell.padStart(14))).join('');
console.log(line('page', 'HTML kB', 'first load kB', 'scripts kB'));
for (const { address, html, firstLoad, scripts } of rows) {
  console.log(line(address, kilobytes(html), kilobytes(firstLoad), kilobytes(scripts)));
}
const files = readSiteFiles();
const total = files.reduce((sum, path) => sum + sentBytes(path, readSiteFile(path)), 0);
console.log(`whole site: ${files.length} files, ${kilobytes(total)} kB`);
