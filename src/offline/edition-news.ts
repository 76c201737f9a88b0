/** An edition of the book and how many points of safety it corrected. */
export interface EditionEntry {
  /** Its day, `YYYY-MM-DD`; later ones compare as greater. */
  readonly id: string;
  readonly safetyPoints: number;
}

/** What a reader of an older edition has to know about the one that is ready. */
export interface EditionNews {
  /** Points of safety corrected since the reader's edition; 0 when there are none. */
  readonly safetyPoints: number;
  /** Where they are listed: the oldest edition that the reader has not seen and that has any. */
  readonly href: string;
}

/** Message by which a page asks a service worker for its editions. */
export const ASK_EDITIONS = 'EDITIONS';

/**
 * What changed for safety between two editions.
 *
 * @param editions all editions that the newer copy knows, in any order
 * @param readersEdition id of the edition that the open page is of; empty when the page does not say
 */
export function editionNews(
  editions: readonly EditionEntry[],
  readersEdition: string,
): EditionNews {
  const unseen = editions
    .filter(({ id, safetyPoints }) => id > readersEdition && safetyPoints > 0)
    .toSorted((a, b) => a.id.localeCompare(b.id));
  return {
    safetyPoints: unseen.reduce((sum, { safetyPoints }) => sum + safetyPoints, 0),
    href: unseen[0] === undefined ? '/editions/' : `/editions/#edition-${unseen[0].id}`,
  };
}

/** The sentence about safety, or nothing where an edition corrects none. */
export function safetySentence({ safetyPoints }: EditionNews): string {
  if (safetyPoints === 0) return '';
  return `This edition corrects ${safetyPoints} ${safetyPoints === 1 ? 'point' : 'points'} of safety`;
}

/** The entries in a message from another edition's worker; whatever has another form is left out. */
export function readEditions(message: unknown): readonly EditionEntry[] {
  if (!Array.isArray(message)) return [];
  return message.filter(
    (entry: unknown): entry is EditionEntry =>
      typeof entry === 'object' &&
      entry !== null &&
      'id' in entry &&
      typeof entry.id === 'string' &&
      'safetyPoints' in entry &&
      typeof entry.safetyPoints === 'number' &&
      Number.isInteger(entry.safetyPoints) &&
      entry.safetyPoints >= 0,
  );
}

/** Time after which an older worker, which does not know the question, is not waited for. */
const PATIENCE_MILLISECONDS = 2000;

/**
 * Asks a worker which editions it knows.
 *
 * @returns nothing when the worker does not answer in time or answers something else
 */
export function askEditions(
  worker: Pick<ServiceWorker, 'postMessage'>,
  patienceMilliseconds = PATIENCE_MILLISECONDS,
): Promise<readonly EditionEntry[]> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    const settle = (message: unknown): void => {
      clearTimeout(timer);
      port1.close();
      resolve(readEditions(message));
    };
    const timer = setTimeout(settle, patienceMilliseconds);
    port1.onmessage = ({ data }: MessageEvent<unknown>) => {
      settle(data);
    };
    worker.postMessage({ type: ASK_EDITIONS }, [port2]);
  });
}
