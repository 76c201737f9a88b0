import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { runRandomEntries } from './random-run.ts';

// npm run test:fuzz runs them all; the one test command runs fewer to keep its time.
const ROUNDS = Number(process.env['FUZZ_ROUNDS'] ?? 10_000);

describe.each([...worksheets.values()])('worksheet $id', (worksheet) => {
  it(`stands up to ${ROUNDS} random entries`, () => {
    expect(runRandomEntries(worksheet, ROUNDS, 'long run').faults).toEqual([]);
  });
});
