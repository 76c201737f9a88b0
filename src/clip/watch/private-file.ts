// Files in the browser's own store for this site: where a copy to watch grows before it is downloaded.
import type { StreamTargetChunk } from 'mediabunny';

const PREFIX = 'film-to-watch-';
/** A copy of another tab may still be waiting for its download. */
const KEPT_MILLISECONDS = 24 * 3600 * 1000;

/** The browser’s store for this site is full. */
export class StoreFullError extends Error {
  override readonly name = 'StoreFullError';
}

/** What only workers have, and the compiler's page library does not describe. */
interface SyncAccessHandle {
  write(data: Uint8Array, options: { readonly at: number }): number;
  flush(): void;
  close(): void;
}
interface WorkerFileHandle extends FileSystemFileHandle {
  createSyncAccessHandle(): Promise<SyncAccessHandle>;
}

function begunAt(name: string): number | undefined {
  const match = /^film-to-watch-(\d+)-/u.exec(name);
  return match === null ? undefined : Number(match[1]);
}

/** Whether this browser has room for a page's files; none has over plain http. */
export function hasPrivateStore(): boolean {
  const { storage } = navigator as { readonly storage?: Partial<StorageManager> };
  return typeof storage?.getDirectory === 'function';
}

/**
 * Removes copies that a crash or a closed tab left in the browser’s store, and those of the names given.
 * Call it when the page starts, and after a download.
 */
export async function sweepPrivateFiles(alsoNamed: readonly string[] = []): Promise<void> {
  if (!hasPrivateStore()) return;
  const root = await navigator.storage.getDirectory();
  const old: string[] = [];
  for await (const name of root.keys()) {
    const begun = begunAt(name);
    const isOld = begun !== undefined && Date.now() - begun > KEPT_MILLISECONDS;
    if (isOld || (begun !== undefined && alsoNamed.includes(name))) old.push(name);
  }
  for (const name of old) {
    // One that another tab is writing stays until it is done.
    await root.removeEntry(name).catch(() => undefined);
  }
}

/** A name for a new copy. */
export function privateFileName(): string {
  return `${PREFIX}${Date.now()}-${crypto.randomUUID()}`;
}

/**
 * Bytes that the store can still take, as the browser states them; undefined where it does not say. Some
 * state 10 GB whatever there is, so that a page cannot tell disks apart: only writing tells.
 */
export async function freeStoreBytes(): Promise<number | undefined> {
  const { quota, usage } = await navigator.storage.estimate();
  return quota === undefined ? undefined : quota - (usage ?? 0);
}

/** A file in the browser’s store that a writer fills in any order. Lives in a worker. */
export class PrivateFile {
  readonly name: string;
  readonly #root: FileSystemDirectoryHandle;
  readonly #entry: FileSystemFileHandle;
  readonly #handle: SyncAccessHandle;
  #isClosed = false;

  private constructor(
    name: string,
    root: FileSystemDirectoryHandle,
    entry: FileSystemFileHandle,
    handle: SyncAccessHandle,
  ) {
    this.name = name;
    this.#root = root;
    this.#entry = entry;
    this.#handle = handle;
  }

  static async make(name: string): Promise<PrivateFile> {
    const root = await navigator.storage.getDirectory();
    const entry = (await root.getFileHandle(name, { create: true })) as WorkerFileHandle;
    try {
      return new PrivateFile(name, root, entry, await entry.createSyncAccessHandle());
    } catch (error) {
      await root.removeEntry(name);
      throw error;
    }
  }

  readonly stream = new WritableStream<StreamTargetChunk>({
    write: ({ data, position }) => {
      // A full store is told by a wrong count, not by an error.
      const written = this.#handle.write(data, { at: position });
      if (written !== data.byteLength) throw new StoreFullError('the store is full');
    },
  });

  /** Ends writing and gives the file, which lies on disk. */
  async finish(): Promise<File> {
    this.#close();
    return this.#entry.getFile();
  }

  #close(): void {
    if (this.#isClosed) return;
    this.#isClosed = true;
    this.#handle.flush();
    this.#handle.close();
  }

  /** Leaves nothing behind. */
  async remove(): Promise<void> {
    if (!this.#isClosed) {
      this.#isClosed = true;
      this.#handle.close();
    }
    await this.#root.removeEntry(this.name);
  }
}
