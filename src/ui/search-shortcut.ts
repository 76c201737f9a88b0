// “/” leads to search from any page, unless the reader is typing or a modifier is held.

import { sitePath } from './islands/site-path.ts';

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || target.matches('input, select, textarea'))
  );
}

addEventListener('keydown', (event) => {
  if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
  if (isTyping(event.target)) return;
  event.preventDefault();
  // The search page's own field, else the one in the head or on the front page if it is to be seen.
  const fields = document.querySelectorAll<HTMLInputElement>('#search-query, [data-search-field]');
  const seen = [...fields].find((field) => field.getClientRects().length > 0);
  if (seen === undefined) location.assign(sitePath('/search/'));
  else seen.focus();
});
