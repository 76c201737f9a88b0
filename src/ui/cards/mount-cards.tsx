import { render } from 'preact';
import { benchOverlay } from '../bench/bench-entries.ts';
import { currentTexts } from '../bench/bench-state.ts';
import { pageBench } from '../bench/page-bench.ts';
import { loadWorksheet } from '../load-worksheet.ts';
import { BenchCard } from './BenchCard.tsx';

// Puts the numbers of the reader's bench on the cards, and lets the reader choose which to print.
// Where there is no bench the cards stay as the build wrote them, and no worksheet is fetched.

const cards = [...document.querySelectorAll<HTMLElement>('[data-card]')];

async function fill(card: HTMLElement): Promise<void> {
  const id = card.dataset['card'] ?? '';
  const worksheet = await loadWorksheet(id);
  const overlay = benchOverlay(worksheet, {}, pageBench.read().state);
  const place = card.querySelector('.card-face');
  if (place === null) return;
  const name = overlay === undefined || overlay.name === '' ? '' : `: ${overlay.name}`;
  place.replaceChildren();
  render(
    <BenchCard
      worksheet={worksheet}
      entries={overlay?.entries ?? {}}
      units={pageBench.read().state.units}
      origin={overlay === undefined ? 'The book’s numbers' : `Your bench${name}`}
      address={`/${worksheet.chapter}/#${worksheet.id}`}
    />,
    place,
  );
  card.dataset['ready'] = 'true';
}

function hasBench(): boolean {
  return Object.keys(currentTexts(pageBench.read().state)).length > 0;
}

let hasFilled = false;
async function fillAll(): Promise<void> {
  if (!hasBench() && !hasFilled) return;
  hasFilled = true;
  // One after the other: the page stays quick while the worksheets arrive.
  for (const card of cards) await fill(card);
  document.querySelector('.cards')?.setAttribute('data-filled', 'true');
}

function boxes(): readonly HTMLInputElement[] {
  return [...document.querySelectorAll<HTMLInputElement>('.card-choice input')];
}

function showChoice(): void {
  const chosen = boxes().filter((box) => box.checked);
  for (const box of boxes()) {
    box.closest('.card')?.classList.toggle('card-left-out', !box.checked);
  }
  const sheets = Math.ceil(chosen.length / 4);
  const count = document.querySelector('.cards-count');
  if (count !== null) {
    count.textContent =
      chosen.length === 0
        ? 'No card is chosen.'
        : `${chosen.length} ${chosen.length === 1 ? 'card' : 'cards'} on ${sheets} ${sheets === 1 ? 'sheet' : 'sheets'} of A4.`;
  }
  document
    .querySelector<HTMLButtonElement>('[data-cards-print]')
    ?.toggleAttribute('disabled', chosen.length === 0);
}

function choose(isChosen: boolean): void {
  for (const box of boxes()) box.checked = isChosen;
  showChoice();
}

// On paper an address needs the name of the site; on the screen it would only move the lines.
addEventListener('beforeprint', () => {
  for (const address of document.querySelectorAll('.card-address')) {
    const path = address.textContent;
    if (path.startsWith('/')) address.textContent = `${location.host}${path}`;
  }
});
for (const box of boxes()) box.addEventListener('change', showChoice);
document.querySelector('[data-cards-all]')?.addEventListener('click', () => {
  choose(true);
});
document.querySelector('[data-cards-none]')?.addEventListener('click', () => {
  choose(false);
});
document.querySelector('[data-cards-print]')?.addEventListener('click', () => {
  print();
});
showChoice();
document.querySelector('[data-cards-tools]')?.setAttribute('data-ready', 'true');
void fillAll();
pageBench.subscribe(() => void fillAll());
