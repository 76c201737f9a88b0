// The page's own small script. The static sheet can be read and printed before the rest arrives.

async function bringToLife(sheet: HTMLElement): Promise<void> {
  const { hydrateGathered } = await import('./hydrate-gathered.tsx');
  await hydrateGathered(sheet);
}

for (const sheet of document.querySelectorAll<HTMLElement>('[data-plan]')) void bringToLife(sheet);
