import { sitePath } from '../ui/islands/site-path.ts';

// Keeps the book on the reader's device. Not while developing, where a kept page would be stale.

/** Time after loading before the book is fetched to be kept; the page at hand comes first. */
const GRACE_MILLISECONDS = 2000;

async function keepOffline(container: ServiceWorkerContainer): Promise<void> {
  const registration = await container.register(sitePath('/service-worker.js'), {
    updateViaCache: 'none',
  });
  // On a first visit there is nothing older to announce until the copy is in charge of the page.
  if (container.controller === null) {
    await new Promise((resolve) => {
      container.addEventListener('controllerchange', resolve, { once: true });
    });
  }
  const { watchEditions } = await import('./watch-editions.ts');
  watchEditions(container, registration);
}

/** Not while a scene plays: fetching the book would take the processor from its pictures. */
function keepWhenStill(): void {
  setTimeout(() => {
    if (document.querySelector('[data-is=playing]') !== null) keepWhenStill();
    // Private windows and some settings forbid it; the book then simply needs the network.
    else keepOffline(navigator.serviceWorker).catch(() => undefined);
  }, GRACE_MILLISECONDS);
}

if (import.meta.env.PROD && 'serviceWorker' in navigator) addEventListener('load', keepWhenStill);
