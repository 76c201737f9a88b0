/** Folder of the host that the site stands in, without its last slash; empty at the root of a host. */
const folder = import.meta.env.BASE_URL.replace(/\/$/u, '');

/**
 * Address of a page or file of the site, wherever on its host the site stands.
 *
 * @param path  from the root of the site, for instance `/search/`
 */
export function sitePath(path: string): string {
  return `${folder}${path}`;
}
