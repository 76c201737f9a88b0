import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { runRandomEntries } from './random-run.ts';

const ROUNDS = 10_000;

describe.each([...worksheets.values()])('worksheet $id', (worksheet) => {
  it(`stands up to ${ROUNDS} random entries`, () => {
    expect(runRandomEntries(worksheet, ROUNDS, 'long run').faults).toEqual([]);
  });
});
