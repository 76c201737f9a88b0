import { makeBenchStore } from './bench-store.ts';

/** The reader's bench, as this page and the browser's store hold it. */
export const pageBench = makeBenchStore(() => localStorage, window);
