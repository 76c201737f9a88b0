import { hydrate } from 'preact';
import { noteEarlyTyping } from './early-typing.ts';
import { loadWorksheet } from '../load-worksheet.ts';
import { PracticeView } from './PracticeView.tsx';
import { drawProblem, type PracticeKind } from './practice-problem.ts';

/** Turns the static problem inside a `<practice-sheet data-kind>` into a live one. */
export async function hydratePractice(sheet: HTMLElement): Promise<void> {
  const kind = JSON.parse(sheet.dataset['kind'] ?? '{}') as PracticeKind;
  const worksheet = await loadWorksheet(kind.worksheet);
  const first = drawProblem(kind, worksheet, () => 0);
  const retype = noteEarlyTyping(sheet);
  hydrate(
    <PracticeView
      kind={kind}
      worksheet={worksheet}
      first={first}
      instance={`practice-${kind.id}`}
    />,
    sheet,
  );
  retype();
  sheet.dataset['ready'] = 'true';
}
