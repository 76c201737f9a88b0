import { evaluate, fillEntries } from '../../worksheets/machine/evaluate.ts';
import { findWorksheet } from '../../worksheets/registry.ts';
import { tidyNumber, type OpenTable } from './open-table.ts';

const WORKSHEET = 'gauge-dimensions';

/** Every gauge with what the worksheet says about it. */
function gaugeOutcomes() {
  const worksheet = findWorksheet(WORKSHEET);
  const inputs = worksheet.inputs;
  const spec = inputs['gauge'];
  if (spec?.kind !== 'choice') throw new Error(`${WORKSHEET} no longer asks for the gauge`);
  return Object.entries(spec.options).map(([gauge, name]) => {
    const { outcome } = evaluate(worksheet, fillEntries(inputs, { gauge }));
    if (outcome === undefined) throw new Error(`${WORKSHEET} refuses ${gauge}`);
    return { gauge, name, outcome };
  });
}

/** The main dimensions and rates of each gauge, one line for each. */
export function gaugeTable(): OpenTable {
  return {
    id: 'gauges',
    title: 'Gauges: main dimensions and rates',
    about: 'One line for each gauge and dimension. “text” is as printed in the book.',
    columns: [
      { key: 'gauge', label: 'Gauge', unit: '' },
      { key: 'gaugeName', label: 'Name of the gauge', unit: '' },
      { key: 'dimension', label: 'What is told', unit: '' },
      { key: 'label', label: 'In words', unit: '' },
      { key: 'value', label: 'Bare number, where there is one', unit: '' },
      { key: 'unit', label: 'Unit of the bare number', unit: '' },
      { key: 'text', label: 'As printed', unit: '' },
    ],
    rows: gaugeOutcomes().flatMap(({ gauge, name, outcome }) =>
      Object.entries(outcome.answers).map(([key, { label, value, unit, text }]) => [
        gauge,
        name,
        key,
        label,
        value === undefined ? null : tidyNumber(value),
        value === undefined ? null : (unit ?? ''),
        text,
      ]),
    ),
  };
}

/** Every dimension of each gauge with its source and how it is known. */
export function gaugeSourceTable(): OpenTable {
  const all = gaugeOutcomes();
  const table = all[0]?.outcome.tables?.[0];
  if (table === undefined) throw new Error(`${WORKSHEET} no longer lists its sources`);
  return {
    id: 'gauge-sources',
    title: 'Gauges: each dimension with its source',
    about: 'As printed in the book, with tolerances where a standard gives them.',
    columns: [
      { key: 'gauge', label: 'Gauge', unit: '' },
      ...['dimension', 'value', 'howKnown', 'source', 'note'].map((key, column) => ({
        key,
        label: table.columns[column] ?? key,
        unit: '',
      })),
    ],
    rows: all.flatMap(({ gauge, outcome }) =>
      (outcome.tables?.[0]?.rows ?? []).map(({ cells }) => [gauge, ...cells]),
    ),
  };
}
