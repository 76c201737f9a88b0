import { render } from 'preact';
import { MixedPracticeView } from './MixedPracticeView.tsx';
import type { PracticeKind } from './practice-problem.ts';

/**
 * Opens the mixed round in place of its button, with all kinds of problems that the page shows.
 *
 * @returns writes its field again from what was typed
 */
export function startMixedPractice(round: HTMLElement): () => void {
  const sheets = [...document.querySelectorAll<HTMLElement>('practice-sheet')];
  const kinds = sheets.map(({ dataset }) => JSON.parse(dataset['kind'] ?? '{}') as PracticeKind);
  round.replaceChildren();
  const draw = (): void => {
    render(<MixedPracticeView kinds={kinds} />, round);
  };
  draw();
  return draw;
}
