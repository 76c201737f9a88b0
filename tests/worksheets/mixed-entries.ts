import type { Entries } from '../../src/worksheets/machine/evaluate.ts';
import { parseEntry } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpec, InputSpecs } from '../../src/worksheets/machine/types.ts';
import { convertUnit, UNITS } from '../../src/quantity/units.ts';
import { seededChance, seedOf } from './random-entries.ts';

const STAYS = 0.4;

/** An entry somewhat larger or smaller than the one that the field opens with. */
function nearby(spec: InputSpec, chance: () => number): string {
  if (spec.kind === 'text') return spec.default;
  if (spec.kind === 'choice') {
    const keys = Object.keys(spec.options);
    return keys[Math.floor(chance() * keys.length)]!;
  }
  const examples = spec.accepted.split(spec.kind === 'list' ? / or / : /, | or /);
  const example = examples[Math.floor(chance() * examples.length)]!.trim();
  const factor = 0.6 + chance();
  const read = parseEntry(spec, spec.default === '' ? example : spec.default, 1);
  if (!read.ok || typeof read.value.value !== 'number') return example;
  const value = read.value.value * factor;
  const within = Math.min(Math.max(value, spec.minimum), spec.maximum);
  if (spec.kind === 'count') return String(Math.round(within));
  if (spec.kind === 'list') return example;
  const shown = spec.entryUnit ?? spec.unit;
  const number = Number(convertUnit(within, spec.unit, shown).toPrecision(3));
  return `${number} ${UNITS[shown].symbol}`.trim();
}

/** Entries of a sheet near those that it opens with, several fields at a time; the same every time. */
export function mixedEntries(id: string, specs: InputSpecs, count: number): readonly Entries[] {
  const chance = seededChance(seedOf(`${id} mixed`));
  return Array.from({ length: count }, () =>
    Object.fromEntries(
      Object.entries(specs).flatMap(([key, spec]): [string, string][] =>
        chance() < STAYS ? [] : [[key, nearby(spec, chance)]],
      ),
    ),
  );
}
