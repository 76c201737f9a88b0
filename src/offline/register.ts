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

if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    setTimeout(() => {
      // Private windows and some settings forbid it; the book then simply needs the network.
      keepOffline(navigator.serviceWorker).catch(() => undefined);
    }, GRACE_MILLISECONDS);
  });
}
