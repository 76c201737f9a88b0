import { describe, expect, test } from 'vitest';
import { WOUND_THICKNESS } from '../../../src/core/reel/reel-length.ts';

describe('International Projectionist, December 1958', () => {
  test.each([
    ['acetate-black-and-white', 0.006],
    ['acetate-colour', 0.0065],
  ] as const)('%s film is %d in thick', (kind, inches) => {
    expect(WOUND_THICKNESS[kind].minimumMillimetres).toBeCloseTo(inches * 25.4, 9);
  });

  test('a stripe leaves 1,440 ft of 1,600, as the table of thicknesses has it', () => {
    const { 'acetate-striped': striped, 'acetate-unsure': plain } = WOUND_THICKNESS;
    const share = plain.minimumMillimetres / striped.minimumMillimetres;
    expect(1600 * share).toBeCloseTo(1440, 0);
  });
});
