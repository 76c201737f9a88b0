import { hydrate, render, type ComponentChildren } from 'preact';
import { BenchForm, type BenchExample } from './BenchForm.tsx';
import { pageBench } from './page-bench.ts';

/**
 * Turns the static form inside `<bench-form data-examples>` into a live one.
 *
 * @returns writes its fields again from the bench that is kept
 */
export async function hydrateBench(element: HTMLElement): Promise<() => void> {
  const examples = JSON.parse(element.dataset['examples'] ?? '[]') as readonly BenchExample[];
  const view = (): ComponentChildren => <BenchForm examples={examples} store={pageBench} />;
  hydrate(view(), element);
  // The render with what is kept is queued; this comes after it.
  await Promise.resolve();
  element.dataset['ready'] = 'true';
  return () => {
    render(view(), element);
  };
}
