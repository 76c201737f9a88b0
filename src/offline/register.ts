import { sitePath } from '../ui/islands/site-path.ts';

// Keeps the book on the reader's device. Not while developing, where a kept page would be stale.

/** Time after loading before the book is fetched to be kept; the page at hand comes first. */
const GRACE_MILLISECONDS = 2000;

/** A scene that plays comes first too, for as long as this. */
const LONGEST_PLAY_MILLISECONDS = 60_000;

const later = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });

/** Waits while a scene plays: fetching the book would take the processor from its pictures. */
async function whenNothingPlays(): Promise<void> {
  const end = performance.now() + LONGEST_PLAY_MILLISECONDS;
  while (performance.now() < end && document.querySelector('[data-is="playing"]') !== null) {
    await later(GRACE_MILLISECONDS);
  }
}

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
    later(GRACE_MILLISECONDS)
      .then(whenNothingPlays)
      .then(() => keepOffline(navigator.serviceWorker))
      // Private windows and some settings forbid it; the book then simply needs the network.
      .catch(() => undefined);
  });
}
