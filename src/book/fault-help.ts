import { findWorksheet } from '../worksheets/registry.ts';

/** Where a fault or a trouble sends the reader. */
export interface Help {
  readonly href: string;
  readonly title: string;
}

/**
 * Where help is: a worksheet, or a section of a chapter.
 *
 * @throws {Error} for a worksheet that is not
 */
export function helpOf(
  place: { readonly worksheet?: string | undefined; readonly section?: string | undefined },
  titles: ReadonlyMap<string, string>,
): Help {
  if (place.worksheet !== undefined) {
    const { chapter, id, title } = findWorksheet(place.worksheet);
    return { href: `/${chapter}/#${id}`, title };
  }
  const section = place.section ?? '';
  const [path = '', anchor = ''] = section.split('#');
  const title = titles.get(path);
  if (title === undefined) throw new Error(`no chapter “${path}”`);
  return { href: `/${path}/#${anchor}`, title };
}
