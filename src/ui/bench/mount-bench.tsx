import { hydrate } from 'preact';
import { BenchForm, type BenchExample } from './BenchForm.tsx';
import { pageBench } from './page-bench.ts';

// The bench page's own script: brings the form to life.

const element = document.querySelector<HTMLElement>('bench-form');
if (element !== null) {
  const examples = JSON.parse(element.dataset['examples'] ?? '[]') as readonly BenchExample[];
  hydrate(<BenchForm examples={examples} store={pageBench} />, element);
  // The render with what is kept is queued; this comes after it.
  await Promise.resolve();
  element.dataset['ready'] = 'true';
}
