import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { z } from 'astro/zod';
import type { InputSpec, QuantityInput } from '../../src/worksheets/machine/types.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { convertUnit, UNITS } from '../../src/quantity/units.ts';
import { projectFolder } from '../walls/source-files.ts';

const path = join(projectFolder, 'tests/worksheets/input-fields.yaml');

const fieldSchema = z.strictObject({
  label: z.string(),
  kind: z.enum(['quantity', 'optional-quantity', 'count', 'choice', 'list', 'text']),
  /** Unit of a bare number. */
  unit: z.string().optional(),
  /** Smallest and largest entry that is taken, in that unit. */
  from: z.number().optional(),
  to: z.number().optional(),
  longest: z.number().optional(),
  mayBeEmpty: z.literal(true).optional(),
  opens: z.string(),
  choices: z.record(z.string(), z.string()).optional(),
  takes: z.string().optional(),
  /** Field of the bench that it opens with instead. */
  bench: z.string().optional(),
  onlyOwnBenchField: z.literal(true).optional(),
  angleOf: z.string().optional(),
  help: z.string(),
});
/** A field as the list has it. */
export type Field = z.infer<typeof fieldSchema>;
/** Unit of a bare number. */
export const shownUnit = (spec: Pick<QuantityInput, 'unit' | 'entryUnit'>) =>
  spec.entryUnit ?? spec.unit;
/** Free of the rounding of a conversion. */
const neat = (value: number): number => Number(value.toPrecision(12));

function limitsOf(spec: InputSpec): Partial<Field> {
  if (spec.kind === 'choice') return { choices: spec.options };
  if (spec.kind === 'text') return { longest: spec.longest };
  if (spec.kind === 'count') {
    const unit = spec.unit === undefined ? {} : { unit: UNITS[spec.unit].symbol };
    return { ...unit, from: spec.minimum, to: spec.maximum };
  }
  const shown = shownUnit(spec);
  return {
    unit: UNITS[shown].symbol,
    from: neat(convertUnit(spec.minimum, spec.unit, shown)),
    to: neat(convertUnit(spec.maximum, spec.unit, shown)),
    ...(spec.kind === 'list' ? { longest: spec.longest } : {}),
    ...(spec.kind === 'list' && spec.mayBeEmpty ? { mayBeEmpty: true as const } : {}),
    ...('angleOf' in spec ? { angleOf: spec.angleOf } : {}),
  };
}

/** A field as the sheet has it, in the words of the list. */
export function fieldOf(spec: InputSpec): Field {
  return {
    label: spec.label,
    kind: spec.kind,
    ...limitsOf(spec),
    opens: spec.default,
    ...(spec.kind === 'choice' ? {} : { takes: spec.accepted }),
    ...(spec.bench === undefined ? {} : { bench: spec.bench }),
    ...(spec.onlyOwnBenchField === true ? { onlyOwnBenchField: true as const } : {}),
    help: spec.help,
  };
}

const HEAD =
  '# Every field of every sheet, as a person checked it; input-fields.test.ts compares.\n';

/** Writes the list as the sheets have it now. */
export function writeFields(): void {
  const list = [...worksheets.values()].map(({ id, inputs }) => [
    id,
    Object.fromEntries(Object.entries(inputs).map(([key, spec]) => [key, fieldOf(spec)])),
  ]);
  const text = stringify(Object.fromEntries(list), { lineWidth: 0, singleQuote: true });
  writeFileSync(path, HEAD + text);
}

/** The list that a person checked: fields by the id of their sheet and their key. */
export function readFields(): Readonly<Record<string, Readonly<Record<string, Field>>>> {
  return z
    .record(z.string(), z.record(z.string(), fieldSchema))
    .parse(parse(readFileSync(path, 'utf8')));
}
