import { expect, test } from 'vitest';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/reel/vapour-limit/worksheet.ts';

const answers = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries)).outcome!.answers;

// The supplement of 2018: 200 ml/m³, peak category II with factor 2.
test('200 ml/m³ over a shift, twice that for a short time', () => {
  const mak = answers({ limit: 'mak' });
  expect(mak['dayLimitPpm']!.value).toBe(200);
  expect(mak['shortLimit']!.text.replaceAll(/\s/gu, ' ')).toBe('400 ppm');
  expect(mak['limitFrom']!.text).toMatch(/MAK.*2018/u);
});

test('is the limit that the sheet opens with', () => {
  expect(answers({})['dayLimitPpm']!.value).toBe(200);
  expect(answers({})['limitFrom']!.text).toMatch(/MAK.*2018/u);
});
