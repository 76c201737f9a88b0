import { hydrate, render, type ComponentChildren } from 'preact';
import { currentTexts } from '../bench/bench-state.ts';
import { pageBench } from '../bench/page-bench.ts';
import { loadWorksheet } from '../load-worksheet.ts';
import { benchFields, worksheetIds } from './gather.ts';
import { GatheredSheet } from './GatheredSheet.tsx';
import { PLANS } from './plans.ts';
import { chosenFromQuery, fieldsFromQuery, sheetAddress } from './sheet-address.ts';

/** Turns the static sheet inside a `data-plan` element into a live one. */
export async function hydrateGathered(element: HTMLElement): Promise<void> {
  const plan = PLANS.get(element.dataset['plan'] ?? '');
  if (plan === undefined) throw new Error('no such sheet');
  const [loaded, warnings] = await Promise.all([
    Promise.all(worksheetIds(plan).map(loadWorksheet)),
    // Only the job sheet needs the gauges to compare.
    plan.warnsOfGauge === true ? import('../../worksheets/bench/bench-warnings.ts') : undefined,
  ]);
  const worksheets = new Map(loaded.map((worksheet) => [worksheet.id, worksheet]));
  const linked = fieldsFromQuery(plan, location.search);
  const shown = chosenFromQuery(plan, location.search);
  const view = (): ComponentChildren => (
    <GatheredSheet
      plan={plan}
      worksheets={worksheets}
      bench={benchFields(plan, worksheets, pageBench.read().state)}
      linked={linked}
      shown={shown}
      warningFor={(gauge) =>
        warnings?.gaugeWarning(gauge, currentTexts(pageBench.read().state)['projector.gauge'] ?? '')
      }
      units={pageBench.read().state.units}
      onChange={(fields, chosen) => {
        // A reload keeps what was typed.
        history.replaceState(history.state, '', sheetAddress(plan, fields, chosen));
      }}
    />
  );
  hydrate(view(), element);
  pageBench.subscribe(() => {
    render(view(), element);
  });
  await Promise.resolve();
  element.dataset['ready'] = 'true';
}
