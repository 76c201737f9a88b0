// The page's own small script: brings each form to life when it comes near the screen, so that a
// chapter costs no more script than the reader scrolls to.
import { whenNearScreen } from './when-near-screen.ts';

const forms = [...document.querySelectorAll<HTMLElement>('worksheet-form')];

async function bringToLife(element: HTMLElement): Promise<void> {
  if (element.dataset['state'] !== undefined) return;
  element.dataset['state'] = 'loading';
  const { hydrateWorksheet } = await import('./hydrate-worksheet.tsx');
  await hydrateWorksheet(element);
  element.dataset['state'] = 'ready';
}

const linked = new URLSearchParams(location.search).get('w');
const linkedForm = forms.find((form) => form.dataset['instance'] === linked);
if (linkedForm !== undefined) {
  void bringToLife(linkedForm).then(() => {
    linkedForm.scrollIntoView();
  });
}
whenNearScreen(forms, bringToLife);

// A sheet must print with the reader's numbers even if it was never scrolled to. Printing does not
// wait, so where a bench is kept all sheets come to life in a quiet moment after loading.
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

if (hasBench()) {
  addEventListener('load', () => {
    setTimeout(() => void fillForPrint(), 1500);
  });
}

addEventListener('beforeprint', () => {
  void fillForPrint();
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.sheet-address')) {
    link.textContent = `${location.origin}${link.pathname}${link.hash}`;
  }
});
