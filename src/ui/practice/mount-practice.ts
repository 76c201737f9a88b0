// Brings a practice problem to life when the reader first touches it. The page shows problems from
// the whole book, and loading every worksheet of it to be read past would be a waste.
import { wakeOnTouch } from '../wake-on-touch.ts';

async function wake(sheet: HTMLElement): Promise<void> {
  const { hydratePractice } = await import('./hydrate-practice.tsx');
  await hydratePractice(sheet);
}

for (const sheet of document.querySelectorAll<HTMLElement>('practice-sheet')) {
  wakeOnTouch(sheet, wake);
}
