import type { Worksheet } from './types.ts';

// Every other file in this folder that exports `worksheet` is a worksheet; a new file registers itself.
const modules = import.meta.glob<{ readonly worksheet?: Worksheet }>('./*.ts', { eager: true });

/** All worksheets by id. For build and tests only: a page loads just the worksheets it shows. */
export const worksheets: ReadonlyMap<string, Worksheet> = new Map(
  Object.values(modules)
    .flatMap(({ worksheet }) => (worksheet === undefined ? [] : [worksheet]))
    .map((worksheet) => [worksheet.id, worksheet] as const)
    .sort(([a], [b]) => a.localeCompare(b)),
);

/**
 * A worksheet by id.
 *
 * @throws {Error} naming the known ids, so that a typo in a chapter fails the build with its cure
 */
export function findWorksheet(id: string): Worksheet {
  const worksheet = worksheets.get(id);
  if (worksheet === undefined) {
    throw new Error(`No worksheet “${id}”. Known: ${[...worksheets.keys()].join(', ')}`);
  }
  return worksheet;
}
