// All 200 judged recordings: the figures that the reading of an empty gate must hold.
import { expect, test } from 'vitest';
import { gateFigures, judgeGate } from './judge-gates.ts';
import { JUDGED_SEEDS } from './gate-scenes.ts';

test('200 recordings: rate, stated error, ripple and cause', () => {
  const figures = gateFigures(JUDGED_SEEDS.map(judgeGate));
  const { cases, refused, causeRight, causeWrong, rates, ripplesRight } = figures;
  const said = `${JSON.stringify({ ...figures, faults: undefined })}\n${figures.faults.join('\n')}`;
  const read = cases - refused;
  expect(cases).toBe(200);
  expect(refused, said).toBeLessThanOrEqual(20);
  expect(causeRight / read, said).toBeGreaterThanOrEqual(0.95);
  expect(causeWrong / cases, said).toBeLessThanOrEqual(0.02);
  expect(figures.ratesClose / rates, said).toBeGreaterThanOrEqual(0.95);
  expect(figures.statedTrue / rates, said).toBeGreaterThanOrEqual(0.95);
  // The lamp's own ripple is still up to 7 % off in some of its cases.
  expect(ripplesRight / read, said).toBeGreaterThanOrEqual(0.92);
});
