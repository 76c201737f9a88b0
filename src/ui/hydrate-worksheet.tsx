import { hydrate, render, type ComponentChildren } from 'preact';
import type { Entries } from '../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../worksheets/machine/types.ts';
import type { SheetOpening } from './bench/sheet-opening.ts';
import { keptSheet, replaceEntry, withSheet, type SheetState } from './islands/history-entry.ts';
import { isOpeningKept, onOpening } from './islands/kept-opening.ts';
import { typedTexts } from './islands/typed-fields.ts';
import { loadPicture } from './islands/load-picture.ts';
import { addressFault, entriesFromQuery } from './permalink.ts';
import { showAddressFault } from './islands/show-address-fault.ts';
import { WorksheetView, type PictureComponent, type TakeBackComponent } from './WorksheetView.tsx';

/** What every sheet opens with on a device that keeps no bench. */
const NO_BENCH: SheetOpening = { bench: undefined, units: 'metric', hasTableReel: false };

/**
 * Turns the static form inside a `<worksheet-form data-id data-instance data-entries data-pictures>`
 * into a live one. What the reader did on this page before wins over a link's numbers, a link over the
 * reader's bench, the bench over the chapter's own numbers.
 *
 * @returns writes its fields again from what was typed
 */
export async function hydrateWorksheet(
  element: HTMLElement,
  worksheet: Worksheet,
): Promise<() => void> {
  const { instance = '', entries: given = '{}', pictures: names = '' } = element.dataset;
  const inputs = worksheet.inputs;
  const entries = JSON.parse(given) as Entries;
  const linked = entriesFromQuery(location.search, instance, inputs);
  const pictures = new Map<string, PictureComponent>();
  const addPicture = async (name: string): Promise<void> => {
    const picture = await loadPicture(name);
    if (picture !== undefined) pictures.set(name, picture);
  };
  // The bench's own code is for readers who keep one; others may begin while this page is open.
  let readOpening: (() => SheetOpening) | undefined;
  const addBench = async (): Promise<void> => {
    if (readOpening !== undefined) return;
    const { sheetOpening } = await import('./bench/sheet-opening.ts');
    readOpening = () => sheetOpening(worksheet, entries);
  };
  await Promise.all([
    ...names.split(' ').map(addPicture),
    ...(isOpeningKept() ? [addBench()] : []),
  ]);

  const kept = keptSheet(history.state, instance);
  // Read last, so that nothing is lost that was typed while the code was on its way.
  const before: SheetState = { ...kept, changed: { ...kept?.changed, ...typedTexts(element) } };
  const keep = (sheet: SheetState): void => {
    replaceEntry(withSheet(history.state, instance, sheet));
  };
  if (Object.keys(before.changed).length > 0) keep(before);
  let takeBack: TakeBackComponent | undefined;
  // A scene has a script of its own: it is taken out of the form that comes to life, and put back.
  const scene = element.querySelector('scene-view');
  scene?.remove();
  const place = scene ? (
    <div class="sheet-scene" ref={(to) => void to?.append(scene)} />
  ) : undefined;
  const view = ({ bench, units, hasTableReel }: SheetOpening): ComponentChildren => (
    <WorksheetView
      worksheet={worksheet}
      instance={instance}
      entries={entries}
      linked={linked}
      before={before}
      bench={bench}
      units={units}
      pictures={pictures}
      path={location.pathname}
      takeBack={hasTableReel ? takeBack : undefined}
      onChange={keep}
      onMissingPicture={(name) => {
        void addPicture(name).then(draw);
      }}
    >
      {place}
    </WorksheetView>
  );
  const opening = (): SheetOpening => readOpening?.() ?? NO_BENCH;
  const draw = (): void => {
    render(view(opening()), element);
  };
  /** Fetched only where a reel of the box lies on the table. */
  const addTakeBack = async (): Promise<void> => {
    if (!opening().hasTableReel || takeBack !== undefined) return;
    const module = await import('./box/TakeBack.tsx').catch(() => undefined);
    takeBack = module?.TakeBack;
    draw();
  };
  hydrate(view(opening()), element);
  onOpening(() => {
    void addBench()
      .catch(() => undefined)
      .then(() => {
        void addTakeBack();
        draw();
      });
  });
  void addTakeBack();
  if (linked !== undefined) {
    showAddressFault(addressFault(location.search, new Map([[instance, inputs]])), element);
  }
  // The render with the reader's own numbers is queued; this comes after it.
  await Promise.resolve();
  element.dataset['ready'] = 'true';
  return draw;
}
