import type { Worksheet } from '../../worksheets/machine/types.ts';

// One chunk per worksheet: a page loads only those it shows.
const modules = import.meta.glob<{ readonly worksheet: Worksheet }>(
  '../../worksheets/*/*/worksheet.ts',
);
/** How to fetch each worksheet, by id: the name of its folder. */
const loaders = new Map(
  Object.entries(modules).map(([path, load]) => [path.split('/').at(-2) ?? '', load]),
);

/** Fetches one worksheet for the page. */
export async function loadWorksheet(id: string): Promise<Worksheet> {
  const load = loaders.get(id);
  if (load === undefined) throw new Error(`no worksheet ${id}`);
  return (await load()).worksheet;
}
