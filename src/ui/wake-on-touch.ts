/**
 * Brings a static form to life at the reader's first touch, click or keyboard focus, so that a page
 * that is only read loads no form script. A button pressed meanwhile is pressed again once it works;
 * what is typed meanwhile is kept by early-typing.ts.
 *
 * @param wake  loads and hydrates; when it fails (off line and not kept yet) the next touch tries again
 */
export function wakeOnTouch(
  element: HTMLElement,
  wake: (element: HTMLElement) => Promise<void>,
): void {
  const calls = new AbortController();
  const { signal } = calls;
  let isWaking = false;
  let pressed: HTMLElement | undefined;

  const begin = async (): Promise<void> => {
    if (isWaking) return;
    isWaking = true;
    try {
      await wake(element);
    } catch {
      isWaking = false;
      return;
    }
    calls.abort();
    pressed?.click();
  };

  for (const kind of ['pointerdown', 'focusin'] as const) {
    element.addEventListener(kind, () => void begin(), { signal });
  }
  element.addEventListener(
    'click',
    (event) => {
      const button = event.target instanceof Element ? event.target.closest('button') : null;
      // A form that a link or a bench has woken answers by itself.
      if (button === null || element.dataset['ready'] === 'true') return;
      event.preventDefault();
      pressed = button;
      void begin();
    },
    { signal },
  );
  // Enter in a field would leave the page for a static form.
  element.addEventListener(
    'submit',
    (event) => {
      event.preventDefault();
    },
    { signal },
  );
}
