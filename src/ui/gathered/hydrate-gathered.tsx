import { hydrate, render, type ComponentChildren } from 'preact';
import { currentTexts } from '../bench/bench-state.ts';
import { pageBench, pageTable } from '../bench/page-bench.ts';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import { onOpening } from '../islands/kept-opening.ts';
import { keptSheet, replaceEntry, withSheet } from '../islands/history-entry.ts';
import { typedTexts } from '../islands/typed-fields.ts';
import { showAddressFault } from '../islands/show-address-fault.ts';
import { loadWorksheet } from '../islands/load-worksheet.ts';
import { benchFields, worksheetIds } from './gather.ts';
import { GatheredSheet } from './GatheredSheet.tsx';
import { PLANS } from './plans.ts';
import {
  chosenFromQuery,
  fieldsFromQuery,
  gatheredAddressFault,
  sheetAddress,
} from './sheet-address.ts';

/** What was written on the blank lines before the script came. */
function typedBlanks(element: HTMLElement): Entries {
  const blanks = [...element.querySelectorAll<HTMLInputElement>('[data-blank]')];
  return Object.fromEntries(
    blanks
      .filter(({ value }) => value !== '')
      .map(({ dataset, value }) => [dataset['blank'] ?? '', value]),
  );
}

/** Steps that were ticked before the script came. */
function tickedSteps(element: HTMLElement): readonly string[] {
  const boxes = [...element.querySelectorAll<HTMLInputElement>('.gathered-choices input:checked')];
  return boxes.map(({ value }) => value);
}

/**
 * Turns the static sheet inside a `data-plan` element into a live one.
 *
 * @returns writes its fields again from what was typed
 */
export async function hydrateGathered(element: HTMLElement): Promise<() => void> {
  const plan = PLANS.get(element.dataset['plan'] ?? '');
  if (plan === undefined) throw new Error('no such sheet');
  const [loaded, warnings] = await Promise.all([
    Promise.all(worksheetIds(plan).map(loadWorksheet)),
    // Only the job sheet needs the gauges to compare.
    plan.warnsOfGauge === true ? import('../../worksheets/bench/bench-warnings.ts') : undefined,
  ]);
  const worksheets = new Map(loaded.map((worksheet) => [worksheet.id, worksheet]));
  const linked = fieldsFromQuery(plan, location.search);
  const blanksId = `${plan.id}-blanks`;
  const keepWritten = (changed: Entries): void => {
    replaceEntry(withSheet(history.state, blanksId, { changed }));
  };
  // Read last, so that nothing is lost that was typed while the code was on its way.
  const kept = keptSheet(history.state, blanksId)?.changed;
  const written = { ...kept, ...typedBlanks(element) };
  if (Object.keys(written).length > 0) keepWritten(written);
  const texts = typedTexts(element);
  const typed = Object.fromEntries(
    Object.entries(texts).filter(([id]) => Object.hasOwn(plan.fields, id)),
  );
  const shown = new Set([...chosenFromQuery(plan, location.search), ...tickedSteps(element)]);
  const view = (): ComponentChildren => (
    <GatheredSheet
      plan={plan}
      worksheets={worksheets}
      bench={benchFields(plan, worksheets, pageBench.read().state, pageTable())}
      linked={linked}
      typed={typed}
      shown={shown}
      warningFor={(gauge) =>
        warnings?.gaugeWarning(gauge, currentTexts(pageBench.read().state)['projector.gauge'] ?? '')
      }
      reelName={pageTable()?.name}
      units={pageBench.read().state.units}
      onChange={(fields, chosen) => {
        // A reload keeps what was typed.
        replaceEntry(history.state, sheetAddress(plan, fields, chosen));
      }}
      written={written}
      onWritten={keepWritten}
    />
  );
  const draw = (): void => {
    render(view(), element);
  };
  hydrate(view(), element);
  showAddressFault(gatheredAddressFault(plan, location.search), element);
  onOpening(draw);
  await Promise.resolve();
  element.dataset['ready'] = 'true';
  return draw;
}
