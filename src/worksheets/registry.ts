import type { Worksheet } from './machine/types.ts';

// A worksheet is the file of that name in its own folder, in the room of its part of the job; a new
// folder registers itself.
const modules = import.meta.glob<{ readonly worksheet: Worksheet }>('./*/*/worksheet.ts', {
  eager: true,
});

/** All worksheets by id. For build and tests only: a page loads just the worksheets it shows. */
export const worksheets: ReadonlyMap<string, Worksheet> = new Map(
  Object.values(modules)
    .map(({ worksheet }) => [worksheet.id, worksheet] as const)
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
