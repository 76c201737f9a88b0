import type { Worksheet } from '../worksheets/types.ts';

// One chunk per worksheet: a page loads only those it shows. Files that no worksheet is named after
// are left out of the list; it is part of every page with a live form.
const modules = import.meta.glob<{ readonly worksheet?: Worksheet }>([
  '../worksheets/*.ts',
  '!../worksheets/{answers,bench-fields,bench-inputs,entry-text,evaluate,picture-data,registry,types}.ts',
  '!../worksheets/*-{answers,findings,inputs,picture,pictures,sum,words,working}.ts',
]);

/** Fetches one worksheet for the page. */
export async function loadWorksheet(id: string): Promise<Worksheet> {
  const module = await modules[`../worksheets/${id}.ts`]?.();
  if (module?.worksheet === undefined) throw new Error(`no worksheet ${id}`);
  return module.worksheet;
}
