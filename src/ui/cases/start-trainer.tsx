import { render } from 'preact';
import { loadStock } from './practice-stock.ts';
import { TrainerView } from './TrainerView.tsx';

/**
 * Opens the trainer's forms in place of their button.
 *
 * @returns writes their fields again from what they keep
 */
export async function startTrainer(place: HTMLElement): Promise<() => void> {
  const stock = await loadStock();
  place.replaceChildren();
  const draw = (): void => {
    render(<TrainerView stock={stock} />, place);
  };
  draw();
  place.querySelector<HTMLElement>('h2')?.focus();
  place.dataset['ready'] = 'true';
  return draw;
}
