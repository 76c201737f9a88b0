import { expect, it } from 'vitest';
import { readPages } from './built-site.ts';

/** A word that runs into a link or into code, or out of it: a line break in the source lost its space. */
const RUN_IN =
  /[A-Za-z,;:)]<(?:a|code|strong|em)[ >][^<]*|<\/(?:a|code|strong|em)>[A-Za-z(“][^<]*/g;

it('no word of a page runs into a link, a stressed word or code', () => {
  const found = readPages().flatMap(({ address, root }) =>
    [...root.querySelector('main')!.outerHTML.matchAll(RUN_IN)].map(
      ([text]) => `${address} ${text}`,
    ),
  );
  expect(found).toEqual([]);
});
