import { readPages } from '../site/built-site.ts';

/** Addresses of all pages of the built site. */
export const pageAddresses: readonly string[] = readPages().map(({ address }) => address);
