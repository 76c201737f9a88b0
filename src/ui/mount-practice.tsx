// Brings the practice problems to life; the static page already shows one problem of each kind.
import { hydrate } from 'preact';
import { noteEarlyTyping } from './early-typing.ts';
import { loadWorksheet } from './load-worksheet.ts';
import { PracticeView } from './PracticeView.tsx';
import { drawProblem, type PracticeKind } from './practice-problem.ts';
import { whenNearScreen } from './when-near-screen.ts';

async function bringToLife(element: HTMLElement): Promise<void> {
  const kind = JSON.parse(element.dataset['kind'] ?? '{}') as PracticeKind;
  const worksheet = await loadWorksheet(kind.worksheet);
  const first = drawProblem(kind, worksheet, () => 0);
  const retype = noteEarlyTyping(element);
  hydrate(<PracticeView kind={kind} worksheet={worksheet} first={first} />, element);
  retype();
  element.dataset['ready'] = 'true';
}

whenNearScreen(document.querySelectorAll<HTMLElement>('practice-sheet'), bringToLife);
