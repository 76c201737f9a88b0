import { expect, test } from 'vitest';
import { readPages, samplePage, type BuiltPage } from './built-site.ts';

/** Labels that stand twice in one list of answers, where a reader could not tell the rows apart. */
function labelsTwice({ root }: BuiltPage): readonly string[] {
  return root
    .querySelectorAll('.sheet-answers dl, .card-answers, .gathered-answers')
    .flatMap((list) => {
      const labels = list.querySelectorAll('dt').map(({ textContent }) => textContent.trim());
      return labels.filter((label, index) => labels.indexOf(label) !== index);
    });
}

test('no two rows of a list of answers have the same label', () => {
  const pages = readPages();
  expect(pages.some(({ root }) => root.querySelector('.sheet-answers dt') !== null)).toBe(true);
  expect(pages.some(({ root }) => root.querySelector('.card-answers dt') !== null)).toBe(true);
  const found = pages.flatMap((page) =>
    labelsTwice(page).map((label) => `${page.address}: ${label}`),
  );
  expect(found).toEqual([]);
});

test('two rows with one label would be found', () => {
  const rows = '<dt>At least</dt><dd>1 m</dd><dt>At least</dt><dd>2 s</dd>';
  const page = samplePage(`<div class="sheet-answers"><dl>${rows}</dl></div>`);
  expect(labelsTwice(page)).toEqual(['At least']);
});
