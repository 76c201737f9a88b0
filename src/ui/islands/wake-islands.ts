// The page's own small script: brings each live part to life when it is needed, so that a chapter
// costs no more script than its reader uses. The static page already shows the book's numbers.
import { showAddressFault } from './show-address-fault.ts';
import { keptSheet, replaceEntry, withSheet } from './history-entry.ts';
import { isAboutOpening, isOpeningKept } from './kept-opening.ts';
import { ISLANDS, type Island, type Redraw } from './islands.ts';
import { markOldAnswers, sayFailed, sayLoading, saySettled, unmarkAnswers } from './old-answers.ts';
import { typedFields, typedTexts } from './typed-fields.ts';
import { whenHanded } from './when-handed.ts';
import { whenNearScreen } from './when-near-screen.ts';
import { whenTouched } from './when-touched.ts';

const waking = new Map<HTMLElement, Promise<void>>();
const failed = new Set<HTMLElement>();
const redraws = new Set<Redraw>();
const isLive = (element: HTMLElement): boolean => element.dataset['ready'] === 'true';

/** While the fields say something else than the answers, the answers are marked. */
function markWhileOld(element: HTMLElement): void {
  if (isLive(element) || typedFields(element).length === 0) return;
  markOldAnswers(element);
  if (waking.has(element)) sayLoading(element);
}

/** What is typed before the script has come survives leaving the page meanwhile. */
function keepTyped(element: HTMLElement): void {
  const { instance = '' } = element.dataset;
  if (instance === '' || isLive(element)) return;
  const kept = keptSheet(history.state, instance);
  const changed = { ...kept?.changed, ...typedTexts(element) };
  replaceEntry(withSheet(history.state, instance, { ...kept, changed }));
}

async function begin(island: Island, element: HTMLElement): Promise<void> {
  markWhileOld(element);
  try {
    redraws.add(await island.wake(element));
  } catch (error) {
    waking.delete(element);
    failed.add(element);
    if (typedFields(element).length > 0) markOldAnswers(element);
    sayFailed(element, () => {
      sayLoading(element);
      void wakeOnce(island, element).catch(() => undefined);
    });
    throw error;
  }
  failed.delete(element);
  unmarkAnswers(element);
  saySettled(element);
}

/** Wakes a part once, whoever asks; after a failure it may be asked again. */
function wakeOnce(island: Island, element: HTMLElement): Promise<void> {
  const begun = waking.get(element);
  if (begun !== undefined) return begun;
  // Entered before it begins, so that a mark made meanwhile knows that it is on its way.
  const start = Promise.resolve().then(() => begin(island, element));
  waking.set(element, start);
  return start;
}

/** A form that was changed on this page before, or that the browser filled, or that a link is about. */
function isAskedFor(island: Island, element: HTMLElement): boolean {
  const { instance = '' } = element.dataset;
  return (
    island.isAskedFor?.() === true ||
    typedFields(element).length > 0 ||
    (instance !== '' &&
      (keptSheet(history.state, instance) !== undefined ||
        new URLSearchParams(location.search).get('w') === instance))
  );
}

const found = ISLANDS.flatMap((island) =>
  [...document.querySelectorAll<HTMLElement>(island.selector)].map((element) => ({
    island,
    element,
  })),
);
const wake = (island: Island, element: HTMLElement): Promise<void> => wakeOnce(island, element);
const quietly = (promise: Promise<void>): void => void promise.catch(() => undefined);

for (const { island, element } of found) {
  if (island.when === 'at-once') quietly(wake(island, element));
  if (island.when === 'near') whenNearScreen([element], () => wake(island, element));
  if (island.when === 'handed') whenHanded(element, () => wake(island, element));
  if (island.when !== 'touched') continue;
  whenTouched(element, () => wake(island, element));
  for (const kind of ['input', 'change'] as const) {
    element.addEventListener(kind, () => {
      markWhileOld(element);
      keepTyped(element);
    });
  }
}

/**
 * Wakes what the reader's own numbers, a link or the browser's memory ask for. A part whose script failed
 * waits for the reader, who is offered to try again.
 */
function wakeAsked(): void {
  for (const { island, element } of found) {
    if (isLive(element) || failed.has(element)) continue;
    if (island.when === 'touched' && isAskedFor(island, element)) quietly(wake(island, element));
  }
}
wakeAsked();

/** No event tells when a browser has done with the fields of a page that it brings back whole. */
const FIELDS_SETTLE_MILLISECONDS = [0, 100, 500] as const;

function bringBack(): void {
  for (const redraw of redraws) redraw();
  wakeAsked();
}

addEventListener('pageshow', ({ persisted }) => {
  if (!persisted) {
    // A browser puts texts back by the time that the page has loaded.
    setTimeout(wakeAsked);
    return;
  }
  // Coming back counts as asking again; and some browsers empty the fields of such a page, in their own time.
  failed.clear();
  for (const delay of FIELDS_SETTLE_MILLISECONDS) setTimeout(bringBack, delay);
});

const { searchParams, hash } = new URL(location.href);
const linked = found.find(({ element }) => element.dataset['instance'] === searchParams.get('w'));
if (linked !== undefined && hash !== '') {
  void wake(linked.island, linked.element)
    .then(() => {
      linked.element.scrollIntoView();
    })
    .catch(() => undefined);
}

if (linked === undefined && searchParams.has('w')) {
  void import('../permalink.ts').then(({ addressFault }) => {
    showAddressFault(addressFault(location.search, new Map()));
  });
}

const sheets = found.filter(({ element }) => element.matches('worksheet-form'));

// Printing does not wait, so where a bench is kept all sheets come to life in a quiet moment.
async function fillForPrint(): Promise<void> {
  for (const { island, element } of sheets) await wake(island, element);
}

function showBench(): void {
  wakeAsked();
  for (const { island, element } of sheets) {
    whenNearScreen([element], () => wake(island, element));
  }
  setTimeout(() => {
    quietly(fillForPrint());
  }, 1500);
}

if (isOpeningKept()) {
  addEventListener('load', showBench);
} else {
  // Another tab may describe a bench while this page is open.
  addEventListener('storage', (event) => {
    if (isAboutOpening(event) && isOpeningKept()) showBench();
  });
}

addEventListener('beforeprint', () => {
  if (isOpeningKept()) quietly(fillForPrint());
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.sheet-address')) {
    link.textContent = `${location.origin}${link.pathname}${link.hash}`;
  }
});
