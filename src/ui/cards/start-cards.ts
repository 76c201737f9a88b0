// Lets the reader choose which cards to print. Only where a bench is kept are the cards filled anew;
// elsewhere they stay as the build wrote them, and no worksheet is fetched.

const cards = [...document.querySelectorAll<HTMLElement>('[data-card]')];

let isFilled = false;

function hasBench(): boolean {
  try {
    return localStorage.getItem('bench') !== null;
  } catch {
    return false;
  }
}

async function fillFromBench(): Promise<void> {
  if (!isFilled && !hasBench()) return;
  isFilled = true;
  const { fillCards } = await import('./fill-cards.tsx');
  await fillCards(cards);
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

/**
 * Starts the choice of cards, and fills them where a bench is kept.
 *
 * @returns shows the choice again as the boxes have it
 */
export function startCards(): () => void {
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
  void fillFromBench();
  // Another tab changed the bench, or this one was told to.
  addEventListener('storage', () => void fillFromBench());
  addEventListener('bench-change', () => void fillFromBench());
  return showChoice;
}
