// All judged recordings: the figures that the reading of an empty gate must hold. Seeds that were looked at
// while something was mended prove less than those that were not, so the sets are judged apart.
import { expect, test } from 'vitest';
import { gateFigures, judgeGate } from './judge-gates.ts';
import { FIRST_SEEDS, JUDGED_SEEDS, SEEN_SEEDS } from './gate-scenes.ts';

test.each([
  ['fixed before the last mends and run after them', JUDGED_SEEDS],
  ['judged before that', SEEN_SEEDS],
  ['judged first of all', FIRST_SEEDS],
])(
  '200 recordings, %s: rate, stated errors, ripple and cause',
  (_, seeds) => {
    const figures = gateFigures(seeds.map(judgeGate));
    const { cases, refused, causeRight, causeWrong, rates, ripplesRight, readouts } = figures;
    const said = `${JSON.stringify({ ...figures, faults: undefined })}\n${figures.faults.join('\n')}`;
    const read = cases - refused;
    // The figures of a run that holds are asked for as well.
    process.stdout.write(`${said}\n`);
    expect(cases).toBe(200);
    expect(refused, said).toBeLessThanOrEqual(20);
    expect(causeRight / read, said).toBeGreaterThanOrEqual(0.95);
    expect(causeWrong / cases, said).toBeLessThanOrEqual(0.02);
    expect(figures.ratesClose / rates, said).toBeGreaterThanOrEqual(0.95);
    expect(figures.statedTrue / rates, said).toBeGreaterThanOrEqual(0.95);
    expect(ripplesRight / read, said).toBeGreaterThanOrEqual(0.95);
    expect(figures.readoutsTrue / readouts, said).toBeGreaterThanOrEqual(0.95);
  },
  3_600_000,
);
