/** An event that a service worker may prolong; when the work fails, an installation has failed. */
export interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
