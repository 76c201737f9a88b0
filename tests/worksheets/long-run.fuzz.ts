import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { SAMPLES } from '../tools/sample-sizes.ts';
import { cornerFaults } from './corner-entries.ts';
import { runRandomEntries } from './random-run.ts';

const ROUNDS = SAMPLES.entries.longRun;
const CORNERS = SAMPLES.corners.longRun;

describe.each([...worksheets.values()])('worksheet $id', (worksheet) => {
  it(`stands up to ${ROUNDS} random entries`, () => {
    expect(runRandomEntries(worksheet, ROUNDS, 'long run').faults).toEqual([]);
  });

  it(`computes at up to ${CORNERS} corners of its ranges or names the field that does not fit`, () => {
    expect(cornerFaults(worksheet, CORNERS)).toEqual([]);
  });
});
