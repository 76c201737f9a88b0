import { hydrate, render, type ComponentChildren } from 'preact';
import { noteEarlyTyping } from './early-typing.ts';
import { loadWorksheet } from '../islands/load-worksheet.ts';
import { PracticeView } from './PracticeView.tsx';
import { drawProblem, type PracticeKind } from './practice-problem.ts';
import { pagePractice } from './practice-store.ts';
import { kindTally, withTry, type KindTally } from './practice-tally.ts';

/**
 * Turns the static problem inside a `<practice-sheet data-kind>` into a live one.
 *
 * @returns writes its field again from what was typed
 */
export async function hydratePractice(sheet: HTMLElement): Promise<() => void> {
  const kind = JSON.parse(sheet.dataset['kind'] ?? '{}') as PracticeKind;
  const worksheet = await loadWorksheet(kind.worksheet);
  const first = drawProblem(kind, worksheet, () => 0);
  const retype = noteEarlyTyping(sheet);
  const view = (kept?: KindTally): ComponentChildren => (
    <PracticeView
      kind={kind}
      worksheet={worksheet}
      first={first}
      instance={`practice-${kind.id}`}
      kept={kept}
      onTried={(isRight) => {
        const tally = pagePractice.update((before) => withTry(before, kind.id, isRight));
        render(view(kindTally(tally, kind.id)), sheet);
      }}
    />
  );
  const draw = (): void => {
    render(view(kindTally(pagePractice.read(), kind.id)), sheet);
  };
  // The first live view repeats the static one; the tally that was kept follows.
  hydrate(view(), sheet);
  draw();
  retype();
  sheet.dataset['ready'] = 'true';
  return draw;
}
