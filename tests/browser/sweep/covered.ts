import type { Page } from '@playwright/test';

/**
 * Focuses one field after another as a keyboard would, and gives those that something else then covers
 * or that stand outside the window.
 */
export async function coveredFields(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const fields = document.querySelectorAll<HTMLElement>(
      'main :is(input, select, textarea):not(.visually-hidden)',
    );
    const faults: string[] = [];
    // A field that has the focus already would not be brought into sight by it.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    const one = (field: HTMLElement): void => {
      if (!field.checkVisibility() || field.matches(':disabled')) return;
      field.focus();
      // Where a field is brought by its focus depends on where the window stood.
      const { left, top, width, height } = field.getBoundingClientRect();
      for (const y of [top + 2, top + height - 2]) {
        const found = document.elementFromPoint(left + width / 2, y);
        if (found !== field) {
          const name = found === null ? 'nothing' : `${found.tagName}.${found.className}`;
          faults.push(`${field.id || field.tagName} is under ${name} at ${Math.round(y)}`);
        }
      }
    };
    for (const field of fields) one(field);
    for (const field of [...fields].reverse()) one(field);
    return faults;
  });
}

/** Smallest side of what can be pressed, by WCAG 2.2, 2.5.8, CSS pixels. */
const SMALLEST_TARGET = 24;

/**
 * What is smaller than a finger can hit. Links inside a sentence are as high as their line, and
 * something hidden but for a screen reader is no target.
 */
export async function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate((smallest) => {
    const all = document.querySelectorAll<HTMLElement>(
      'button, select, input, textarea, summary, nav a, .button, .running-book a',
    );
    return [...all]
      .filter((target) => target.closest('.visually-hidden') === null)
      .filter((target) => target.checkVisibility() && !target.matches(':disabled'))
      .map((target) => ({ target, box: target.getBoundingClientRect() }))
      .filter(({ target, box }) => {
        // A box is pressed by its label as well.
        const label = target.closest('label')?.getBoundingClientRect() ?? box;
        return (
          Math.max(box.height, label.height) < smallest ||
          Math.max(box.width, label.width) < smallest
        );
      })
      .map(
        ({ target, box }) =>
          `${target.tagName}.${target.className} “${target.textContent.slice(0, 20)}” ${box.width.toFixed(1)} × ${box.height.toFixed(1)}`,
      );
  }, SMALLEST_TARGET);
}
