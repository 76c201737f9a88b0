import fc from 'fast-check';
import { tidyName } from '../../src/ui/bench/bench-schema.ts';
import {
  isOnShelf,
  type BenchState,
  type NamedTexts,
  type Shelf,
} from '../../src/ui/bench/bench-state.ts';
import { STORED_FIELDS } from '../../src/worksheets/machine/bench-fields.ts';

// Arbitrary benches for the property tests. Texts are any that a reader can type, right or wrong.

const likely = [
  '18',
  '16 2/3',
  '24; 25',
  '25; 50; 60',
  '1/50',
  '1/25; 1/50',
  '16 ms',
  '0',
  '3',
  '50 %',
];
const atLimits = ['1', '60', '240', '0.001', '1e6', '20000', '-5', '180°', '15 m', '50 ft', 'free'];
const gauges = ['super-8', '8mm-type-r', '16mm', '35mm'];
const text = fc.oneof(
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }),
  fc.constantFrom(...likely, ...atLimits, ...gauges),
);

function anyNamed(shelf: Shelf): fc.Arbitrary<NamedTexts> {
  const fields = STORED_FIELDS.filter((field) => isOnShelf(field, shelf));
  return fc.record({
    name: text.map((typed) => tidyName(typed, 'Nameless')),
    entries: fc.dictionary(fc.constantFrom(...fields), text, { noNullPrototype: true }),
  });
}

/** Any state that the page can make. */
export const anyBench: fc.Arbitrary<BenchState> = fc
  .record({
    benches: fc.array(anyNamed('benches'), { maxLength: 4 }),
    reels: fc.array(anyNamed('reels'), { maxLength: 4 }),
    benchPick: fc.nat(),
    reelPick: fc.nat(),
    region: fc.constantFrom('' as const, '25/50' as const, '30/60' as const),
    units: fc.constantFrom('metric' as const, 'imperial' as const),
  })
  .map(({ benchPick, reelPick, ...state }) => ({
    ...state,
    currentBench: benchPick % Math.max(1, state.benches.length),
    currentReel: reelPick % Math.max(1, state.reels.length),
  }));
