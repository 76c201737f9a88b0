import { whenTouched } from './when-touched.ts';

/** Files dropped on a part of a page whose script was still on its way. */
const handed = new WeakMap<HTMLElement, File>();

/** The file that was dropped before the script came; given once. */
export function takeHandedFile(element: HTMLElement): File | undefined {
  const file = handed.get(element);
  handed.delete(element);
  return file;
}

/**
 * Calls `wake` at the reader's first touch, and when a file is dragged over the element. A file that is
 * dropped stays in the page: without a script the browser would leave the page for it.
 */
export function whenHanded(element: HTMLElement, wake: () => Promise<void>): void {
  whenTouched(element, wake);
  element.addEventListener('dragenter', () => void wake().catch(() => undefined));
  element.addEventListener('paste', () => void wake().catch(() => undefined));
  element.addEventListener('dragover', (event) => {
    event.preventDefault();
  });
  element.addEventListener('drop', (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined && element.dataset['ready'] !== 'true') handed.set(element, file);
  });
}
