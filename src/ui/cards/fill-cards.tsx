import { render } from 'preact';
import { benchOverlay } from '../bench/bench-entries.ts';
import { currentTexts } from '../bench/bench-state.ts';
import { pageBench, pageTable } from '../bench/page-bench.ts';
import { loadWorksheet } from '../islands/load-worksheet.ts';
import { sitePath } from '../islands/site-path.ts';
import { BenchCard } from './BenchCard.tsx';

async function fill(card: HTMLElement): Promise<void> {
  const worksheet = await loadWorksheet(card.dataset['card'] ?? '');
  const { state } = pageBench.read();
  const overlay = benchOverlay(worksheet, {}, state, pageTable());
  const face = card.querySelector('.card-face');
  if (face === null) return;
  const name = overlay === undefined || overlay.name === '' ? '' : `: ${overlay.name}`;
  // The build wrote the first face; from here on Preact renews its own.
  if (card.dataset['ready'] === undefined) face.replaceChildren();
  render(
    <BenchCard
      worksheet={worksheet}
      entries={overlay?.entries ?? {}}
      units={state.units}
      origin={overlay === undefined ? 'The book’s numbers' : `Your bench${name}`}
      address={sitePath(`/${worksheet.chapter}/#${worksheet.id}`)}
    />,
    face,
  );
  card.dataset['ready'] = 'true';
}

let hasFilled = false;

/** Puts the numbers of the reader's bench on the cards, and again after each change of it. */
export async function fillCards(cards: readonly HTMLElement[]): Promise<void> {
  const isDescribed =
    Object.keys(currentTexts(pageBench.read().state, pageTable()?.entries)).length > 0;
  if (!isDescribed && !hasFilled) return;
  hasFilled = true;
  // One after the other: the page stays quick while the worksheets arrive.
  for (const card of cards) await fill(card);
  document.querySelector('.cards')?.setAttribute('data-filled', 'true');
}
