// The page's own small script: brings each form to life when it comes near the screen, so that a
// chapter costs no more script than the reader scrolls to.

const forms = [...document.querySelectorAll<HTMLElement>('worksheet-form')];

async function bringToLife(element: HTMLElement): Promise<void> {
  if (element.dataset['state'] !== undefined) return;
  element.dataset['state'] = 'loading';
  const { hydrateWorksheet } = await import('./hydrate-worksheet.tsx');
  await hydrateWorksheet(element);
  element.dataset['state'] = 'ready';
}

const observer = new IntersectionObserver(
  (entries) => {
    for (const entry of entries) {
      if (!entry.isIntersecting) continue;
      observer.unobserve(entry.target);
      void bringToLife(entry.target as HTMLElement);
    }
  },
  { rootMargin: '300px' },
);

const linked = new URLSearchParams(location.search).get('w');
for (const form of forms) {
  if (form.dataset['instance'] === linked) {
    void bringToLife(form).then(() => {
      form.scrollIntoView();
    });
  } else {
    observer.observe(form);
  }
}

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
