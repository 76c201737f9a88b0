import { announceEdition } from './announce-edition.ts';

// Keeps the book on the reader's device. Not while developing, where a kept page would be stale.

/** Time after loading before the book is fetched to be kept; the page at hand comes first. */
const GRACE_MILLISECONDS = 2000;

async function keepOffline(container: ServiceWorkerContainer): Promise<void> {
  const hadEdition = container.controller !== null;
  const registration = await container.register('/service-worker.js', { updateViaCache: 'none' });
  const offer = (): void => {
    const waiting = registration.waiting;
    // Without an older edition in charge there is nothing to reload for.
    if (waiting === null || container.controller === null) return;
    announceEdition(() => {
      waiting.postMessage({ type: 'SKIP_WAITING' });
    });
  };
  offer();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', offer);
  });
  container.addEventListener('controllerchange', () => {
    // Another tab may have asked for the new edition; this one keeps its place until the reader asks.
    if (hadEdition) announceEdition();
  });
}

if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    setTimeout(() => {
      // Private windows and some settings forbid it; the book then simply needs the network.
      keepOffline(navigator.serviceWorker).catch(() => undefined);
    }, GRACE_MILLISECONDS);
  });
}
