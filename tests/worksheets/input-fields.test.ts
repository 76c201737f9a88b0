import { describe, expect, it } from 'vitest';
import { parseEntry } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpec } from '../../src/worksheets/machine/types.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { convertUnit } from '../../src/quantity/units.ts';
import { IS_APPROVING } from '../tools/approved-text.ts';
import { fieldOf, readFields, shownUnit, writeFields, type Field } from './input-fields.ts';

// input-fields.yaml is the list of every field of every sheet as a person checked it: what it opens with,
// which entries it takes and in which unit a bare number is meant. A field that says something else than
// the list fails here. After a change that is meant, npm run approve writes the list again: read what
// differs, limits above all.

if (IS_APPROVING) writeFields();
const fields = readFields();

const listed = Object.entries(fields).flatMap(([id, of]) =>
  Object.entries(of).map(([key, field]) => ({ id, key, field })),
);

const specOf = (id: string, key: string): InputSpec => {
  const spec = worksheets.get(id)?.inputs[key];
  if (spec === undefined) throw new Error(`${id} has no field ${key}`);
  return spec;
};

const plain = (text: string): string => text.replaceAll(/\s/gu, ' ');

/** What the field makes of an entry: the value in its own unit, or the sentence of its refusal. */
function readingOf(id: string, key: string, text: string): unknown {
  // At one frame a second an angle is a share of a second.
  const read = parseEntry(specOf(id, key), text, 1);
  return read.ok ? read.value.value : plain(read.reason);
}

const typed = (value: number, { unit = '' }: Field): string => `${value} ${unit}`.trim();
/** A step beyond a limit, just larger than what is forgiven for the rounding of a unit. */
function beyond(limit: number, other: number, way: 1 | -1): number {
  const step = Math.max(Math.abs(limit) * 1e-6, Math.abs(other) * 1e-9);
  return Number((limit + way * step).toFixed(12));
}

/** Printed without groups of digits. */
const isShort = (limit: number): boolean => Number.isInteger(limit) && Math.abs(limit) < 1000;
const rangeText = ({ from, to, unit = '' }: Field): string =>
  `is outside the range ${from} to ${to}${unit && ` ${unit}`}. Try `.replaceAll('-', '−');

describe('the fields of the sheets', () => {
  it.each([...worksheets.values()])('$id has the fields of the list', ({ id, inputs }) => {
    const has = Object.fromEntries(
      Object.entries(inputs).map(([key, spec]) => [key, fieldOf(spec)]),
    );
    expect(has).toEqual(fields[id]);
  });

  it('are of sheets that exist', () => {
    expect(Object.keys(fields)).toEqual([...worksheets.keys()]);
    expect(listed.length).toBeGreaterThan(250);
  });

  const ranged = listed.filter(({ field }) => field.from !== undefined && field.kind !== 'count');
  it.each(ranged)('$id $key takes both limits and nothing beyond', ({ id, key, field }) => {
    const spec = specOf(id, key);
    if (spec.kind === 'choice' || spec.kind === 'count' || spec.kind === 'text') {
      throw new Error('has no range');
    }
    const ends = [field.from!, field.to!] as const;
    const isList = spec.kind === 'list';
    for (const end of ends) {
      const inUnit = convertUnit(end, shownUnit(spec), spec.unit);
      const read = readingOf(id, key, typed(end, field));
      expect(isList ? (read as number[])[0] : read).toBeCloseTo(inUnit, 9);
    }
    const [from, to] = ends;
    const refusals = [beyond(from, to, -1), beyond(to, from, 1)].map((value) =>
      readingOf(id, key, typed(value, field)),
    );
    for (const refusal of refusals) {
      expect(refusal).toMatch(
        isList ? /^Entry 1 is outside the range / : /^“.+” is outside the range /,
      );
      expect(refusal).toContain(` Try ${plain(field.takes!)}.`);
      if (isShort(from) && isShort(to)) expect(refusal).toContain(rangeText(field));
    }
  });

  const counts = listed.filter(({ field }) => field.kind === 'count');
  it.each(counts)('$id $key counts from one limit to the other', ({ id, key, field }) => {
    const { from, to, takes } = field;
    expect(readingOf(id, key, String(from))).toBe(from);
    expect(readingOf(id, key, String(to))).toBe(to);
    for (const value of [from! - 1, to! + 1]) {
      const refusal = readingOf(id, key, String(value));
      expect(refusal).toMatch(/^“/);
      expect(refusal).toContain(` Try ${plain(takes!)}.`);
    }
    expect(readingOf(id, key, String(to! + 1))).toBe(
      `“${to! + 1}” is outside the range ${from} to ${to}. Try ${plain(takes!)}.`,
    );
  });

  const choices = listed.filter(({ field }) => field.kind === 'choice');
  it.each(choices)('$id $key takes its choices and no other', ({ id, key, field }) => {
    for (const choice of Object.keys(field.choices!)) {
      expect(readingOf(id, key, choice)).toBe(choice);
    }
    expect(readingOf(id, key, 'no-such-choice')).toBe(
      `“no-such-choice” is not one of the choices: ${plain(Object.values(field.choices!).join('; '))}.`,
    );
  });

  it('a choice that may stay open opens so: what was not looked at is not taken as good', () => {
    const isOpen = (choice: string): boolean => /^(?:not-.*|unknown)$/u.test(choice);
    const open = choices.filter(({ field }) => Object.keys(field.choices!).some(isOpen));
    expect(open.length).toBeGreaterThan(20);
    expect(open.filter(({ field }) => !isOpen(field.opens))).toEqual([]);
  });

  const lists = listed.filter(({ field }) => field.kind === 'list');
  it.each(lists)('$id $key takes a list as long as it says', ({ id, key, field }) => {
    const entries = (count: number): string =>
      Array.from({ length: count }, () => typed(field.to!, field)).join('; ');
    expect(readingOf(id, key, entries(field.longest!))).toHaveLength(field.longest!);
    expect(readingOf(id, key, entries(field.longest! + 1))).toBe(
      `That is more than ${field.longest} entries. Try ${plain(field.takes!)}.`,
    );
    const empty = readingOf(id, key, ' ');
    if (field.mayBeEmpty) expect(empty).toEqual([]);
    else expect(empty).toContain(' Try ');
  });

  const optional = listed.filter(({ field }) => field.kind === 'optional-quantity');
  it.each(optional)('$id $key may be left empty, and then has no value', ({ id, key }) => {
    expect(readingOf(id, key, ' ')).toBeUndefined();
  });

  it('would not do: a quantity that must be given, left empty', () => {
    expect(readingOf('flash-match', 'filmFps', ' ')).toContain(' Try ');
  });
});
