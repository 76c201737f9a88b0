// A few judged recordings; judged-gates.fuzz.ts takes them all.
import { expect, test } from 'vitest';
import { SAMPLES } from '../../../tools/sample-sizes.ts';
import { gateFigures, judgeGate } from './judge-gates.ts';
import { JUDGED_SEEDS } from './gate-scenes.ts';

const STEP = JUDGED_SEEDS.length / SAMPLES.gates.command;

test(`${SAMPLES.gates.command} of the judged recordings hold the figures`, () => {
  const seeds = JUDGED_SEEDS.filter((_, index) => index % STEP === 0);
  const figures = gateFigures(seeds.map(judgeGate));
  const said = figures.faults.join('\n');
  expect(figures.cases).toBe(SAMPLES.gates.command);
  expect(figures.causeWrong, said).toBeLessThanOrEqual(1);
  expect(figures.causeRight, said).toBeGreaterThanOrEqual(SAMPLES.gates.command - 1);
  expect(figures.rates - figures.ratesClose, said).toBeLessThanOrEqual(1);
  expect(figures.rates - figures.statedTrue, said).toBeLessThanOrEqual(1);
}, 600_000);
