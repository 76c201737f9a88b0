import { hydrate, render, type ComponentChildren } from 'preact';
import { pageBench } from '../bench/page-bench.ts';
import { BoxPage } from './BoxPage.tsx';
import { layCurrent, pageBox } from './page-box.ts';

function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const STORES = { box: pageBox, bench: pageBench, lay: layCurrent, today };

/**
 * Turns the static form inside `<box-form>` into a live one.
 *
 * @returns writes its fields again from the box that is kept
 */
export async function hydrateBox(element: HTMLElement): Promise<() => void> {
  const view = (): ComponentChildren => <BoxPage stores={STORES} />;
  hydrate(view(), element);
  // The render with what is kept is queued; this comes after it.
  await Promise.resolve();
  element.dataset['ready'] = 'true';
  return () => {
    render(view(), element);
  };
}
