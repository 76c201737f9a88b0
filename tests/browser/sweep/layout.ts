import type { Page } from '@playwright/test';

/** Notes every shift of the layout that no key or pointer caused; call before the page is opened. */
export async function noteShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const shifts: string[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        const { value, hadRecentInput, sources } = entry as PerformanceEntry & {
          readonly value: number;
          readonly hadRecentInput: boolean;
          readonly sources: readonly { readonly node: Node | null }[];
        };
        if (hadRecentInput) continue;
        const names = sources.map(({ node }) =>
          node instanceof Element ? `${node.tagName.toLowerCase()}.${node.className}` : 'text',
        );
        shifts.push(`${value.toFixed(4)} ${names.join(' ')}`);
      }
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

/** The shifts noted so far. */
export async function notedShifts(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => (window as unknown as { shifts: string[] }).shifts);
}

/** Forgets them, after something that no reader would see: printing lays the page out anew. */
export async function forgetShifts(page: Page): Promise<void> {
  await page.evaluate(async () => {
    // Shifts of the last picture are told after the next one.
    for (let pictures = 0; pictures < 2; pictures += 1) {
      await new Promise((resolve) => {
        requestAnimationFrame(resolve);
      });
    }
    (window as unknown as { shifts: string[] }).shifts.length = 0;
  });
}

/** Elements that reach past the right edge of the window where it would scroll sideways. */
export async function elementsTooWide(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const edge = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= edge) return [];
    return [...document.querySelectorAll<HTMLElement>('body *')]
      .filter((element) => element.getBoundingClientRect().right > edge + 1)
      .slice(0, 5)
      .map((element) => `${element.tagName.toLowerCase()}.${element.className}`);
  });
}

/** What lies over a note in the margin, or under it. */
export async function overlappedNotes(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const notes = [...document.querySelectorAll('.margin-note')]
      .filter((note) => note.checkVisibility())
      .map((note) => note.getBoundingClientRect());
    return [...document.querySelectorAll<HTMLElement>('.prose > *, .prose figure > img')]
      .filter((part) => !part.matches('p, ol, ul, dl, h2, h3, blockquote'))
      .filter((part) => {
        const { left, right, top, bottom } = part.getBoundingClientRect();
        return notes.some(
          (note) =>
            Math.min(right, note.right) - Math.max(left, note.left) > 1 &&
            Math.min(bottom, note.bottom) - Math.max(top, note.top) > 1,
        );
      })
      .map((part) => `${part.tagName.toLowerCase()}.${part.className} ${part.id}`);
  });
}
