import { whenNearScreen } from '../when-near-screen.ts';

// The bench page's own script: brings the form to life once the page stands.

whenNearScreen([...document.querySelectorAll<HTMLElement>('bench-form')], async (element) => {
  const { hydrateBench } = await import('./hydrate-bench.tsx');
  await hydrateBench(element);
});
