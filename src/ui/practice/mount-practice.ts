// Brings a practice problem to life when the reader first touches it. The page shows problems from
// the whole book, and loading every worksheet of it to be read past would be a waste.

/** Wakes one problem at the first touch; what was pressed meanwhile is pressed again when it lives. */
function wakeOnTouch(sheet: HTMLElement): void {
  const calls = new AbortController();
  const { signal } = calls;
  let isWaking = false;
  let pressed: HTMLElement | undefined;

  const wake = async (): Promise<void> => {
    if (isWaking) return;
    isWaking = true;
    try {
      const { hydratePractice } = await import('./hydrate-practice.tsx');
      await hydratePractice(sheet);
    } catch {
      // Off line and not kept yet: the next touch tries again.
      isWaking = false;
      return;
    }
    calls.abort();
    pressed?.click();
  };
  const begin = (): void => void wake();

  sheet.addEventListener('pointerdown', begin, { signal });
  sheet.addEventListener('focusin', begin, { signal });
  sheet.addEventListener(
    'click',
    (event) => {
      const button = event.target instanceof Element ? event.target.closest('button') : null;
      if (button === null) return;
      event.preventDefault();
      pressed = button;
      begin();
    },
    { signal },
  );
  // Enter in the entry presses the button as well, so this only stops the page from being left.
  sheet.addEventListener(
    'submit',
    (event) => {
      event.preventDefault();
    },
    { signal },
  );
}

for (const sheet of document.querySelectorAll<HTMLElement>('practice-sheet')) wakeOnTouch(sheet);
