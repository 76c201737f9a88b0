/** A store that behaves like a browser's, with a limit; and one page event bus for each tab. */
export class FakeStorage implements Storage {
  readonly #texts = new Map<string, string>();
  readonly #tabs: EventTarget[] = [];
  /** Characters that fit. */
  limit = 5_000_000;
  isBlocked = false;

  get length(): number {
    return this.#texts.size;
  }

  #touch(): void {
    if (this.isBlocked) throw new DOMException('denied', 'SecurityError');
  }

  getItem(key: string): string | null {
    this.#touch();
    return this.#texts.get(key) ?? null;
  }

  setItem(key: string, text: string): void {
    this.#touch();
    const others = [...this.#texts].filter(([other]) => other !== key);
    const used = others.reduce((sum, [name, kept]) => sum + name.length + kept.length, 0);
    if (used + key.length + text.length > this.limit) {
      throw new DOMException('full', 'QuotaExceededError');
    }
    this.#texts.set(key, text);
  }

  removeItem(key: string): void {
    this.#touch();
    this.#texts.delete(key);
  }

  key(index: number): string | null {
    return [...this.#texts.keys()][index] ?? null;
  }

  clear(): void {
    this.#texts.clear();
  }

  /**
   * The store as one tab sees it: what this tab writes is told to the other tabs.
   *
   * @returns a way to open it, and the page that its events arrive at
   */
  openTab(): { open: () => Storage; page: EventTarget } {
    const page = new EventTarget();
    this.#tabs.push(page);
    const tell = (key: string): void => {
      for (const other of this.#tabs) {
        if (other !== page) other.dispatchEvent(Object.assign(new Event('storage'), { key }));
      }
    };
    const view = new Proxy<FakeStorage>(this, {
      get: (target, name) => {
        if (name === 'setItem') {
          return (key: string, text: string) => {
            target.setItem(key, text);
            tell(key);
          };
        }
        if (name === 'removeItem') {
          return (key: string) => {
            target.removeItem(key);
            tell(key);
          };
        }
        return (key: string) => (name === 'getItem' ? target.getItem(key) : undefined);
      },
    });
    return {
      page,
      open: () => {
        this.#touch();
        return view;
      },
    };
  }
}
