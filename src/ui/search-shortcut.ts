// “/” leads to search from any page, unless the reader is typing or a modifier is held.

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
  const field = document.querySelector<HTMLInputElement>('#search-query');
  if (field === null) location.assign('/search/');
  else field.focus();
});
