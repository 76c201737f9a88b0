// Prints, as JSON, the scripts that the byte budgets count for each page of the built site.
import { loadWorksheets } from '../bench/parts/load-worksheets.ts';
import { readPages, readSiteFile, readSiteFiles } from '../site/built-site.ts';
import { scriptsOf } from '../site/page-weight.ts';
import { wantedChunks, withScene } from '../site/wanted-chunks.ts';

const worksheets = await loadWorksheets();
/** Film frames are drawn by a worker, which has a budget of its own. */
const workers = readSiteFiles().filter((path) => /^assets\/film-worker\..*\.js$/u.test(path));
const counted = readPages().map((page) => {
  const choices = wantedChunks(page, worksheets);
  const paths = choices.flatMap((wanted) => {
    const drawing = withScene(page, wanted);
    if (drawing === undefined) return [...scriptsOf(page, readSiteFile, wanted)];
    return [...scriptsOf(page, readSiteFile, drawing), ...workers];
  });
  return [page.address, [...new Set(paths)].sort()] as const;
});
console.log(JSON.stringify(Object.fromEntries(counted)));
