import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { readExamples } from '../content/read-content.ts';
import { projectFolder, readFiles } from '../walls/source-files.ts';
import { expectApproved } from '../tools/approved-text.ts';
import { printedSheet, type PrintedCase } from './printed-sheet.ts';

// What every sheet prints in the worked examples and in the entries of reaching-entries.yaml was read by a
// person and is kept in approved/, one file per sheet. After a change that is meant, write the files
// again and read the difference line by line before it is committed:
//   npm run approve
// These texts guard what was found right; whether a number is right is asked by the other tests.

const examples = readExamples();
const reaching = parse(
  readFileSync(join(projectFolder, 'tests/worksheets/reaching-entries.yaml'), 'utf8'),
) as Readonly<Record<string, readonly { readonly entries: Entries }[]>>;

function casesOf(id: string): readonly PrintedCase[] {
  const worked = (examples.get(id) ?? []).map(({ title, entries }) => ({ title, entries }));
  const reached = (reaching[id] ?? []).map(({ entries }, index) => ({
    title: `Reaching entries ${index + 1}`,
    entries,
  }));
  return [...worked, ...reached];
}

describe('what the sheets print', () => {
  it.each([...worksheets.values()])('$id as it was read and approved', async (worksheet) => {
    const printed = await printedSheet(worksheet, casesOf(worksheet.id));
    expectApproved(`tests/worksheets/approved/${worksheet.id}.txt`, printed);
  });

  it('has a file for every sheet and no other', () => {
    const kept = readFiles('tests/worksheets/approved', ['.txt']).map(({ path }) => path);
    expect(kept).toEqual(
      [...worksheets.keys()].map((id) => `tests/worksheets/approved/${id}.txt`).sort(),
    );
  });
});
