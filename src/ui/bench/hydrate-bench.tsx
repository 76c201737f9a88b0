import { hydrate, render, type ComponentChildren } from 'preact';
import { BenchForm, type BenchExample } from './BenchForm.tsx';
import { pageBench, pageTable } from './page-bench.ts';

/**
 * Turns the static form inside `<bench-form data-examples>` into a live one.
 *
 * @returns writes its fields again from the bench that is kept
 */
export async function hydrateBench(element: HTMLElement): Promise<() => void> {
  const examples = JSON.parse(element.dataset['examples'] ?? '[]') as readonly BenchExample[];
  const view = (): ComponentChildren => <BenchForm examples={examples} store={pageBench} />;
  pageBench.subscribe(() => {
    // A reel of the box on the table is judged again for the bench that is now in use.
    if (pageTable() === undefined) return;
    void import('../box/page-box.ts')
      .then(({ layCurrent }) => {
        layCurrent(pageBench.read().state);
      })
      .catch(() => undefined);
  });
  hydrate(view(), element);
  // The render with what is kept is queued; this comes after it.
  await Promise.resolve();
  element.dataset['ready'] = 'true';
  return () => {
    render(view(), element);
  };
}
