import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'astro/zod';
import { describe, expect, it } from 'vitest';
import { holds } from '../../src/practice/case-conditions.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { readCaseKinds } from '../content/read-content.ts';
import { projectFolder } from '../walls/source-files.ts';

const handCase = z.strictObject({
  kind: z.string(),
  from: z.string(),
  entries: z.record(z.string(), z.string()),
  facts: z.record(z.string(), z.string()).optional(),
  right: z.string(),
});
const path = join(projectFolder, 'tests/practice/hand-cases.yaml');
const cases = z.array(handCase).parse(parse(readFileSync(path, 'utf8')));
const kinds = new Map(readCaseKinds().map((kind) => [kind.id, kind]));

const SOUND_REEL = {
  gauge: 'super-8',
  year: '1971',
  smell: 'none',
  deposit: 'none',
  mould: 'none',
  warp: 'flat',
  base: 'acetate',
  brittleness: 'supple',
  acidLevel: 'level-0',
  shrinkagePercent: '0.2',
  perforations: 'none',
  splices: 'sound',
  stripe: 'none',
};

function gigabytes(text: string): number {
  const reading = { unit: 'byte', entryUnit: 'GB', minimum: 0, maximum: 1e15 } as const;
  const parsed = parseQuantity(text, reading);
  if (!parsed.ok) throw new Error(text);
  return parsed.value.value;
}

describe('cases written by hand from the tables of the chapters', () => {
  it('are sixty and more, over all parts', () => {
    expect(cases.length).toBeGreaterThanOrEqual(60);
    expect(new Set(cases.map(({ kind }) => kinds.get(kind)?.part)).size).toBe(4);
  });

  it.each(cases)('$kind, $entries: $right', ({ kind: id, entries, facts = {}, right }) => {
    const kind = kinds.get(id)!;
    const worksheet = findWorksheet(kind.worksheet);
    const isReel = kind.worksheet === 'condition-triage';
    const filled = fillEntries(worksheet.inputs, { ...(isReel ? SOUND_REEL : {}), ...entries });
    const { outcome } = evaluate(worksheet, filled);
    const told = Object.fromEntries(
      Object.entries(facts).map(([key, text]) => [
        key,
        key === 'stick' ? { text, value: gigabytes(text) } : { text },
      ]),
    );
    const ground = { outcome: outcome!, entries: filled, facts: told };
    const found = (kind.choices ?? [])
      .filter(({ when }) => when.some((condition) => holds(ground, condition)))
      .map(({ text }) => text);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(new RegExp(`^${right.replaceAll('.', String.raw`\.`)}`, 'u'));
  });
});
