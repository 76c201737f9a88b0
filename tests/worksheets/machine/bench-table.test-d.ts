import { benchInput } from '../../../src/worksheets/machine/bench-input.ts';
import type {
  BENCH_TABLE,
  BenchField,
  StoredField,
} from '../../../src/worksheets/machine/bench-table.ts';
import type { InputSpecs, ValuesOf } from '../../../src/worksheets/machine/types.ts';

// Checked with the types of the project: each line below a `@ts-expect-error` must not compile.

type Same<One, Other> = [One, Other] extends [Other, One] ? true : false;

/** The fields are the rows, no more and no fewer. */
export const fieldsAreRows: Same<BenchField, keyof typeof BENCH_TABLE> = true;

/** Those that are kept are the rows that a reader fills in. */
export const keptAreFilled: Same<
  Exclude<BenchField, StoredField>,
  `region.${'mainsHz' | 'deliveryFps'}`
> = true;

const words = { label: 'Rate', help: 'None.', accepted: '18' } as const;
const rate = { kind: 'quantity', unit: 'fps', minimum: 1, maximum: 60, default: '18' } as const;

export const known = { rate: { ...rate, ...words, bench: 'reel.nativeFps' } } satisfies InputSpecs;

export const misspelt = {
  // @ts-expect-error -- no row of the table is called `reel.nativeFsp`
  rate: { ...rate, ...words, bench: 'reel.nativeFsp' },
} satisfies InputSpecs;

// @ts-expect-error -- the region is not filled in by a sheet's field
export const region = benchInput('region.mainsHz');

export const inputs = {
  gauge: { ...benchInput('reel.gauge'), default: 'super-8' },
  steps: { ...benchInput('camera.lensSteps'), default: 'third' },
} as const satisfies InputSpecs;

/** A choice that comes from the table keeps its keys. */
export const steps: Same<ValuesOf<typeof inputs>['steps'], 'third' | 'half' | 'whole' | 'free'> =
  true;
