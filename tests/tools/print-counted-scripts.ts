// Prints, as JSON, the scripts that the byte budgets count for each page of the built site.
import { loadWorksheets } from '../bench/parts/load-worksheets.ts';
import { readPages, readSiteFile } from '../site/built-site.ts';
import { scriptsOf } from '../site/page-weight.ts';
import { wantedChunks } from '../site/wanted-chunks.ts';

const worksheets = await loadWorksheets();
const counted = readPages().map((page) => {
  const choices = wantedChunks(page, worksheets);
  const paths = choices.flatMap((wanted) => [...scriptsOf(page, readSiteFile, wanted)]);
  return [page.address, [...new Set(paths)].sort()] as const;
});
console.log(JSON.stringify(Object.fromEntries(counted)));
