/** Everything by which a reader, a browser or another program can touch a form. */
const TOUCHES = ['pointerdown', 'focusin', 'input', 'change'] as const;

/**
 * Calls `wake` at the reader's first touch, key or change, so that a page that is only read loads no
 * form script. A button pressed meanwhile is pressed again once it works.
 *
 * @param wake  loads and hydrates; may be called again and again until it has succeeded
 */
export function whenTouched(element: HTMLElement, wake: () => Promise<void>): void {
  const calls = new AbortController();
  const { signal } = calls;
  /** A scene in a sheet is touched for itself. */
  const isOwn = ({ target }: Event): boolean =>
    (target as Element).closest('scene-view')?.contains(element) ?? true;
  let pressed: HTMLElement | undefined;

  const begin = async (): Promise<void> => {
    try {
      await wake();
    } catch {
      return;
    }
    if (signal.aborted) return;
    calls.abort();
    pressed?.click();
  };

  for (const kind of TOUCHES) {
    element.addEventListener(kind, (event) => void (isOwn(event) && begin()), {
      signal,
    });
  }
  element.addEventListener(
    'click',
    (event) => {
      const button = (event.target as Element).closest('button');
      // A form that a link or a bench has woken answers by itself.
      if (!button || !isOwn(event) || element.dataset['ready'] === 'true') return;
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
