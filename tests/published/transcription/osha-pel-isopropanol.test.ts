import { expect, test } from 'vitest';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/reel/vapour-limit/worksheet.ts';

// The preamble of 1989 as NIOSH keeps it: 400 ppm before; 500 ppm for 15 minutes added, then sent
// back by the court and not in force.
test('OSHA has 400 ppm in force and no limit for a short time', () => {
  const { answers } = evaluate(
    worksheet,
    fillEntries(worksheet.inputs, { limit: 'osha' }),
  ).outcome!;
  expect(answers['dayLimitPpm']!.value).toBe(400);
  expect(answers['limitFrom']!.text).toContain('in force');
  expect(answers['shortLimit']!.text).toMatch(/^none/u);
  expect(answers['limitFrom']!.note).toMatch(/500 ppm.*not in force/u);
});
