// The page's own small script: brings a form to life when it is needed, so that a chapter costs no
// more script than its reader uses. The static form already shows the chapter's numbers. A link's
// numbers are needed at once, a bench's numbers when the form comes near the screen, and everything
// else at the first touch.
import { showAddressFault } from './show-address-fault.ts';
import { wakeOnTouch } from './wake-on-touch.ts';
import { whenNearScreen } from './when-near-screen.ts';

const forms = [...document.querySelectorAll<HTMLElement>('worksheet-form')];
const waking = new Map<HTMLElement, Promise<void>>();

async function hydrateForm(form: HTMLElement): Promise<void> {
  const { hydrateWorksheet } = await import('./hydrate-worksheet.tsx');
  await hydrateWorksheet(form);
}

/** Wakes a form once, whoever asks; after a failure it may be asked again. */
function bringToLife(form: HTMLElement): Promise<void> {
  const begun = waking.get(form);
  if (begun !== undefined) return begun;
  const begin = hydrateForm(form).catch((error: unknown) => {
    waking.delete(form);
    throw error;
  });
  waking.set(form, begin);
  return begin;
}

// Printing does not wait, so where a bench is kept all sheets come to life in a quiet moment.
async function fillForPrint(): Promise<void> {
  for (const form of forms) await bringToLife(form);
}

function hasBench(): boolean {
  try {
    return localStorage.getItem('bench') !== null;
  } catch {
    return false;
  }
}

function showBench(): void {
  whenNearScreen(forms, bringToLife);
  setTimeout(() => void fillForPrint(), 1500);
}

for (const form of forms) wakeOnTouch(form, bringToLife);

const linked = new URLSearchParams(location.search).get('w');
const linkedForm = forms.find((form) => form.dataset['instance'] === linked);
if (linkedForm !== undefined) {
  void bringToLife(linkedForm).then(() => {
    linkedForm.scrollIntoView();
  });
} else if (linked !== null) {
  void import('./permalink.ts').then(({ addressFault }) => {
    showAddressFault(addressFault(location.search, new Map()));
  });
}

if (hasBench()) {
  addEventListener('load', showBench);
} else {
  // Another tab may describe a bench while this page is open.
  addEventListener('storage', ({ key }) => {
    if (key === 'bench') showBench();
  });
}

addEventListener('beforeprint', () => {
  if (hasBench()) void fillForPrint();
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.sheet-address')) {
    link.textContent = `${location.origin}${link.pathname}${link.hash}`;
  }
});
