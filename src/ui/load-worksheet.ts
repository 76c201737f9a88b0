import type { AnyWorksheet } from '../worksheets/types.ts';

// One chunk per worksheet: a page loads only those it shows.
const modules = import.meta.glob<{ readonly worksheet?: AnyWorksheet }>([
  '../worksheets/*.ts',
  '!../worksheets/{answers,bench-fields,bench-inputs,entry-text,evaluate,picture-data,registry,types}.ts',
]);

/** Fetches one worksheet for the page. */
export async function loadWorksheet(id: string): Promise<AnyWorksheet> {
  const module = await modules[`../worksheets/${id}.ts`]?.();
  if (module?.worksheet === undefined) throw new Error(`no worksheet ${id}`);
  return module.worksheet;
}
