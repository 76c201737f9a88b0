import type { Entries } from '../../src/worksheets/machine/evaluate.ts';
import { parseEntry } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpec, InputSpecs } from '../../src/worksheets/machine/types.ts';
import { convertUnit, UNITS } from '../../src/quantity/units.ts';
import { seededChance, seedOf } from './random-entries.ts';

const STAYS = 0.4;

/** A field that takes numbers. */
type Figure = Exclude<InputSpec, { readonly kind: 'text' | 'choice' }>;

/** What a field opens with, or an example of it, times a factor. */
function scaled(spec: Figure, example: string, factor: number, digits: number): string {
  const read = parseEntry(spec, spec.default === '' ? example : spec.default, 1);
  if (!read.ok || typeof read.value.value !== 'number') return example;
  const value = read.value.value * factor;
  const within = Math.min(Math.max(value, spec.minimum), spec.maximum);
  if (spec.kind === 'count') return String(Math.round(within));
  if (spec.kind === 'list') return example;
  const shown = spec.entryUnit ?? spec.unit;
  const number = Number(convertUnit(within, spec.unit, shown).toPrecision(digits));
  return `${number} ${UNITS[shown].symbol}`.trim();
}

const examplesOf = (spec: Figure): readonly string[] =>
  spec.accepted.split(spec.kind === 'list' ? / or /u : /, | or /u).map((text) => text.trim());

/** An entry somewhat larger or smaller than the one that the field opens with. */
function nearby(spec: InputSpec, chance: () => number): string {
  if (spec.kind === 'text') return spec.default;
  if (spec.kind === 'choice') {
    const keys = Object.keys(spec.options);
    return keys[Math.floor(chance() * keys.length)]!;
  }
  const examples = examplesOf(spec);
  const example = examples[Math.floor(chance() * examples.length)]!;
  return scaled(spec, example, 0.6 + chance(), 3);
}

/**
 * Entries of a sheet no figure of which is round: each quantity a few percent off what the field opens
 * with, to seven digits, so that every digit which is printed shows. Choices, counts and lists stay.
 */
export function untidyEntries(id: string, specs: InputSpecs, count: number): readonly Entries[] {
  const chance = seededChance(seedOf(`${id} untidy`));
  return Array.from({ length: count }, () =>
    Object.fromEntries(
      Object.entries(specs).flatMap(([key, spec]): [string, string][] =>
        spec.kind === 'quantity' || spec.kind === 'optional-quantity'
          ? [[key, scaled(spec, examplesOf(spec)[0]!, 0.96 + 0.08 * chance(), 7)]]
          : [],
      ),
    ),
  );
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
