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
  expect(figures.causeWrong, said).toBe(0);
  expect(figures.causeRight, said).toBe(SAMPLES.gates.command);
  expect(figures.rates - figures.ratesClose, said).toBe(0);
  expect(figures.rates - figures.statedTrue, said).toBe(0);
}, 600_000);
