// Every tenth judged recording; judged-gates.fuzz.ts takes them all.
import { expect, test } from 'vitest';
import { gateFigures, judgeGate } from './judge-gates.ts';
import { JUDGED_SEEDS } from './gate-scenes.ts';

test('a sample of the judged recordings holds the figures', () => {
  const seeds = JUDGED_SEEDS.filter((_, index) => index % 10 === 0);
  const figures = gateFigures(seeds.map(judgeGate));
  const said = figures.faults.join('\n');
  expect(figures.cases).toBe(20);
  expect(figures.causeWrong, said).toBeLessThanOrEqual(1);
  expect(figures.causeRight, said).toBeGreaterThanOrEqual(17);
  expect(figures.rates - figures.ratesClose, said).toBeLessThanOrEqual(1);
  expect(figures.rates - figures.statedTrue, said).toBeLessThanOrEqual(1);
}, 600_000);
