// Puts the name of the bench in use under its link in the running head. On every page, so it stays
// tiny: it reads the one name and leaves the care for everything else to the store.
// Keys and shapes: the contracts in bench-versions.ts and table-reel.ts.

interface Laid {
  readonly name?: unknown;
}

interface Named {
  readonly benches?: readonly { readonly name?: unknown }[];
  readonly currentBench?: number;
}

const short = (name: unknown): string => (typeof name === 'string' ? name.slice(0, 60) : '');

function storedName(): string {
  try {
    const reel = JSON.parse(localStorage.getItem('table-reel') ?? '{}') as Laid | null;
    const stored = JSON.parse(localStorage.getItem('bench') ?? '{}') as Named | null;
    const name = stored?.benches?.[stored.currentBench ?? 0]?.name;
    // A long name of a reel must not push the menu about.
    return [short(name), short(reel?.name).slice(0, 24)].filter((each) => each !== '').join(' · ');
  } catch {
    // Blocked or damaged: no name.
    return '';
  }
}

function showName(): void {
  const place = document.querySelector('[data-bench-name]');
  if (place !== null) place.textContent = storedName();
}

showName();
addEventListener('storage', showName);
addEventListener('bench-change', showName);
addEventListener('table-reel', showName);
