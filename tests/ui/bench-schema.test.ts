import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchJson, parseBenchState, tidyName } from '../../src/ui/bench/bench-schema.ts';
import { isOnShelf, MOST, type BenchState } from '../../src/ui/bench/bench-state.ts';
import { parseStoredText } from '../../src/ui/bench/bench-text.ts';
import { STORED_FIELDS } from '../../src/worksheets/machine/bench-fields.ts';
import type { StoredField } from '../../src/worksheets/machine/bench-table.ts';
import { anyBench } from './any-bench.ts';
import { contractCases } from './bench-contract-cases.ts';

/** What is wrong with the shape of a state, whatever it was read from. */
function shapeFaults(state: BenchState): readonly string[] {
  const shelves = ['benches', 'reels'] as const;
  return [
    ...shelves.flatMap((shelf) =>
      state[shelf].flatMap(({ name, entries }) => [
        ...(name.trim() === '' ? [`a nameless one on ${shelf}`] : []),
        ...Object.entries(entries).flatMap(([field, text]) =>
          STORED_FIELDS.includes(field as StoredField) &&
          isOnShelf(field as StoredField, shelf) &&
          typeof text === 'string' &&
          text !== ''
            ? []
            : [`${shelf}: ${field} is ${String(text)}`],
        ),
      ]),
    ),
    ...(state.currentBench < Math.max(1, state.benches.length) ? [] : ['no such bench']),
    ...(state.currentReel < Math.max(1, state.reels.length) ? [] : ['no such reel']),
  ];
}

describe('the stored bench', () => {
  it.each(contractCases)('$title', ({ stored, state, faults }) => {
    const reading = parseStoredText(stored);
    if (reading.kind !== 'read') throw new Error('taken for a later version');
    expect(reading.state).toEqual(state);
    expect(reading.faults).toHaveLength(faults.length);
    faults.forEach((fault, index) => {
      expect(reading.faults[index]).toContain(fault);
    });
  });

  it('of a later version is told apart and not read', () => {
    expect(parseStoredText('{"version":4,"benches":[]}')).toEqual({ kind: 'later-version' });
  });

  it('comes back from its text as it was', () => {
    fc.assert(
      fc.property(anyBench, (state) => {
        expect(parseStoredText(benchJson(state))).toEqual({ kind: 'read', state, faults: [] });
      }),
    );
  });

  it('is sound whatever JSON it is read from', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
        expect(shapeFaults(parseBenchState(value).state)).toEqual([]);
      }),
    );
  });

  it('is sound whatever stands under its own keys', () => {
    const item = fc.oneof(
      fc.jsonValue(),
      fc.record({
        name: fc.jsonValue(),
        entries: fc.dictionary(fc.constantFrom(...STORED_FIELDS, '__proto__'), fc.jsonValue()),
      }),
    );
    const anything = fc.record(
      {
        version: fc.jsonValue(),
        benches: fc.oneof(fc.jsonValue(), fc.array(item)),
        reels: fc.oneof(fc.jsonValue(), fc.array(item)),
        currentBench: fc.jsonValue(),
        currentReel: fc.jsonValue(),
        region: fc.jsonValue(),
        units: fc.jsonValue(),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(anything, (value) => {
        const { state, faults } = parseBenchState(value);
        expect(shapeFaults(state)).toEqual([]);
        // Reading what was read finds nothing more to complain of.
        expect(parseStoredText(benchJson(state))).toEqual({ kind: 'read', state, faults: [] });
        expect(faults.every((fault) => fault !== '')).toBe(true);
      }),
    );
  });

  it('keeps at most so many benches, and says so', () => {
    const many = Array.from({ length: MOST.benches + 3 }, (_, index) => ({
      name: `B${index}`,
      entries: {},
    }));
    const { state, faults } = parseBenchState({ version: 1, benches: many });
    expect(state.benches).toHaveLength(MOST.benches);
    expect(faults).toEqual([`benches: more than ${MOST.benches}`]);
  });

  it('shows a name on one line, no longer than its field, and the same when tidied again', () => {
    expect(tidyName('  Club\n\u0000 bench\u202e ', 'x')).toBe('Club bench');
    expect(tidyName(' \t ', 'My bench')).toBe('My bench');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (typed) => {
        const tidy = tidyName(typed, 'x');
        expect([...tidy].length).toBeLessThanOrEqual(MOST.nameLength);
        expect(tidyName(tidy, 'x')).toBe(tidy);
      }),
    );
  });
});
