// Puts the name of the bench in use under its link in the running head. On every page, so it stays
// tiny: it reads the one name and leaves the care for everything else to the store.
// Key and shape: the contract in bench-schema.ts.

interface Named {
  readonly benches?: readonly { readonly name?: unknown }[];
  readonly currentBench?: number;
}

function storedName(): string {
  try {
    const stored = JSON.parse(localStorage.getItem('bench') ?? '{}') as Named | null;
    const name = stored?.benches?.[stored.currentBench ?? 0]?.name;
    return typeof name === 'string' ? name.slice(0, 60) : '';
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
