import { hydrate, render, type ComponentChildren } from 'preact';
import type { InputSpecs } from '../../worksheets/machine/types.ts';
import { benchOverlay } from '../bench/bench-entries.ts';
import { pageBench } from '../bench/page-bench.ts';
import { takeHandedFile } from '../islands/when-handed.ts';
import { typedTexts } from '../islands/typed-fields.ts';
import type { RecordingKind, RecordingReader } from './recording-kind.ts';
import { RecordingSheet } from './RecordingSheet.tsx';

/** Files dropped on the element or pasted into it, and one that was there before the script. */
function listenOn(element: HTMLElement): (take: (file: File) => void) => () => void {
  return (take) => {
    const calls = new AbortController();
    const { signal } = calls;
    const takeFrom = (event: Event, data: DataTransfer | null): void => {
      const file = data?.files[0];
      if (file === undefined) return;
      event.preventDefault();
      take(file);
    };
    element.addEventListener(
      'drop',
      (event) => {
        takeFrom(event, event.dataTransfer);
      },
      { signal },
    );
    element.addEventListener(
      'paste',
      (event) => {
        takeFrom(event, event.clipboardData);
      },
      { signal },
    );
    const waiting =
      takeHandedFile(element) ??
      element.querySelector<HTMLInputElement>('input[type="file"]')?.files?.[0];
    if (waiting !== undefined) take(waiting);
    return () => {
      calls.abort();
    };
  };
}

/** Draws the sheet of one kind into its element. */
function show<
  Specs extends InputSpecs,
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found>,
>(element: HTMLElement, kind: RecordingKind<Specs, Settings, Found, Reader>): () => void {
  const instance = element.dataset['name'] ?? 'recording';
  const listen = listenOn(element);
  const { sheet } = kind.fields;
  // The field of the file has no name.
  const typed = Object.fromEntries(
    Object.entries(typedTexts(element)).filter(([key]) => Object.hasOwn(sheet.inputs, key)),
  );
  const view = (): ComponentChildren => (
    <RecordingSheet
      kind={kind}
      instance={instance}
      typed={typed}
      bench={benchOverlay(sheet, kind.demoEntries ?? {}, pageBench.read().state)}
      listen={listen}
    />
  );
  const draw = (): void => {
    render(view(), element);
  };
  hydrate(view(), element);
  pageBench.subscribe(draw);
  return draw;
}

/**
 * Turns the static sheet inside a `<recording-sheet data-kind data-name>` into a live one. What decodes a
 * file is not loaded here, but when one is there.
 *
 * @returns draws it again
 */
export async function hydrateRecording(element: HTMLElement): Promise<() => void> {
  const draw =
    element.dataset['kind'] === 'film'
      ? show(element, (await import('./film-kind.ts')).filmKind)
      : show(element, (await import('./gate-kind.ts')).gateKind);
  await Promise.resolve();
  element.dataset['ready'] = 'true';
  return draw;
}
