import { announceEdition, followReader } from './announce-edition.ts';
import { askEditions, editionNews, type EditionNews } from './edition-news.ts';

// Keeps the book on the reader's device. Not while developing, where a kept page would be stale.

/** Time after loading before the book is fetched to be kept; the page at hand comes first. */
const GRACE_MILLISECONDS = 2000;

/** What an edition corrected since the one that the open page is of. */
async function newsOf(worker: ServiceWorker): Promise<EditionNews> {
  const mark = document.querySelector<HTMLMetaElement>('meta[name="edition"]');
  return editionNews(await askEditions(worker), mark?.content ?? '');
}

async function keepOffline(container: ServiceWorkerContainer): Promise<void> {
  const hadEdition = container.controller !== null;
  const registration = await container.register('/service-worker.js', { updateViaCache: 'none' });
  const offer = async (): Promise<void> => {
    const waiting = registration.waiting;
    // Without an older edition in charge there is nothing to reload for.
    if (waiting === null || container.controller === null) return;
    const news = await newsOf(waiting);
    // Meanwhile another tab may have put it in charge, which is announced below.
    if (registration.waiting !== waiting) return;
    announceEdition(news, () => {
      waiting.postMessage({ type: 'SKIP_WAITING' });
    });
  };
  void offer();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', () => void offer());
  });
  container.addEventListener('controllerchange', () => {
    // Another tab may have asked for the new edition; this one keeps its place until the reader asks.
    const newest = container.controller;
    if (!hadEdition || newest === null || followReader()) return;
    void newsOf(newest).then((news) => {
      announceEdition(news);
    });
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
