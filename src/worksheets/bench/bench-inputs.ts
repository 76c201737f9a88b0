import {
  BENCH_TABLE,
  type BenchField,
  type BenchPlace,
  type FilledRow,
  type RegionRow,
  type StoredField,
} from '../machine/bench-table.ts';
import type { ChoiceInput, InputSpec } from '../machine/types.ts';

const rows: readonly (readonly [BenchField, FilledRow | RegionRow])[] = Object.entries(
  BENCH_TABLE,
) as [BenchField, FilledRow | RegionRow][];
const filledRows = rows.filter(
  (entry): entry is readonly [StoredField, FilledRow] => entry[1].shelf !== 'region',
);

/** A row as an input of the form. Each may stay empty: the book's number then holds. */
function formInput(key: StoredField, { field }: FilledRow): InputSpec {
  const group = key.slice(0, key.indexOf('.'));
  switch (field.kind) {
    case 'choice':
      return { ...field, options: { '': 'not said', ...field.options }, default: '' };
    case 'quantity': {
      // The rate that an angle is read at stands in the same group.
      const { angleOf, ...rest } = field;
      return angleOf === undefined
        ? { ...rest, default: '' }
        : { ...rest, default: '', angleOf: `${group}.${angleOf}` };
    }
    default:
      return { ...field, default: '' };
  }
}

/** The fields of the bench as a form shows them. */
export const BENCH_INPUTS = Object.fromEntries(
  filledRows.map(([key, row]) => [key, formInput(key, row)]),
) as Readonly<Record<StoredField, InputSpec>>;

/** Fields that stand at a place of the form, in order. */
export function fieldsAt(place: BenchPlace): readonly StoredField[] {
  return filledRows.filter(([, row]) => row.place === place).map(([key]) => key);
}

/** The code of each field in a link; private fields have none. */
export const LINK_CODES: ReadonlyMap<StoredField, string> = new Map(
  filledRows.flatMap(([key, { link }]) => (link === 'private' ? [] : [[key, link] as const])),
);

/** The region: mains frequency and the rate of delivered video go together. */
export const REGION_INPUT = {
  kind: 'choice',
  label: 'Region',
  options: {
    '': 'not said',
    '25/50': '25 frames/s, mains 50 Hz',
    '30/60': '29.97 frames/s, mains 60 Hz',
  },
  default: '',
  help: 'Rate of the finished video and frequency of the mains.',
} as const satisfies ChoiceInput;

/** How lengths among the answers are shown. Entries may be typed in either, always. */
export const UNITS_INPUT = {
  kind: 'choice',
  label: 'Lengths in answers',
  options: { metric: 'metres and millimetres', imperial: 'feet and inches' },
  default: 'metric',
  help: 'You can type either anywhere, for instance 50 ft or 15 m.',
} as const satisfies ChoiceInput;
