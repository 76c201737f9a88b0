/** Moves the focus with the arrow keys: from the field into the results, through them, and back. */
export function moveThroughResults(event: KeyboardEvent, page: HTMLElement): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const field = page.querySelector<HTMLElement>('input');
  const stops = [field, ...page.querySelectorAll<HTMLElement>('.hit-link')];
  const at = stops.indexOf(document.activeElement as HTMLElement | null);
  if (at < 0) return;
  const next = stops[at + (event.key === 'ArrowDown' ? 1 : -1)];
  if (next === undefined || next === null) return;
  event.preventDefault();
  next.focus();
}
