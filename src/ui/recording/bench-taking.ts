import { setText } from '../bench/bench-edits.ts';
import { pageBench } from '../bench/page-bench.ts';
import type { BenchText } from './bench-texts.ts';

/**
 * Puts the values into the bench in use; the sheets of the page follow at once.
 *
 * @returns whether the browser keeps them
 */
export function takeIntoBench(texts: readonly BenchText[]): boolean {
  const { trouble } = pageBench.update((state) =>
    texts.reduce((changed, { field, text }) => setText(changed, field, text), state),
  );
  return trouble === undefined;
}
