import { announceEdition, followReader } from './announce-edition.ts';
import { askEditions, editionNews, type EditionNews } from './edition-news.ts';

/** What an edition corrected since the one that the open page is of. */
async function newsOf(worker: ServiceWorker): Promise<EditionNews> {
  const mark = document.querySelector<HTMLMetaElement>('meta[name="edition"]');
  return editionNews(await askEditions(worker), mark?.content ?? '');
}

/**
 * Announces a newer edition as soon as it is kept ready, or when another tab has put it in charge.
 *
 * @param container the page's service workers, one of them in charge of the page
 * @param registration the registration of the book's worker
 */
export function watchEditions(
  container: ServiceWorkerContainer,
  registration: ServiceWorkerRegistration,
): void {
  const offer = async (): Promise<void> => {
    const { waiting } = registration;
    if (waiting === null) return;
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
    if (newest === null || followReader()) return;
    void newsOf(newest).then((news) => {
      announceEdition(news);
    });
  });
}
