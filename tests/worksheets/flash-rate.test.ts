import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/gate/flash-rate/worksheet.ts';

const refusal = (bladesPerTurn: string, shutterTurnsPerFrame: string): string =>
  evaluate(worksheet, fillEntries(worksheet.inputs, { bladesPerTurn, shutterTurnsPerFrame }))
    .messages['shutterTurnsPerFrame'] ?? '';

describe('flash rate', () => {
  test('turns that make no whole number of flashes are refused without being offered again', () => {
    expect(refusal('3', '1/2')).toContain('multiple of 1/3');
    expect(refusal('3', '1/2')).not.toContain('1/2');
    expect(refusal('1', '1/2')).toContain('whole number of turns');
    expect(refusal('1', '1/2')).not.toContain('1/2');
    expect(refusal('2', '1/2')).toBe('');
  });

  test('every entry that a refusal offers is accepted', () => {
    const { accepted } = worksheet.inputs.shutterTurnsPerFrame;
    for (let blades = 1; blades <= 6; blades += 1) {
      for (const offered of accepted.split(' or ')) {
        expect(refusal(String(blades), offered), `${blades} × ${offered}`).toBe('');
      }
      // The field itself begins at a quarter.
      if (blades <= 4) expect(refusal(String(blades), `1/${blades}`)).toBe('');
    }
  });

  test('more flashes than any shutter makes are refused by the turns', () => {
    expect(refusal('6', '3')).toMatch(/at most 2, because no shutter makes more than 12/u);
  });
});
