import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

// Abstract: meant for aspect ratios of 1.66 to 1 or greater.
test('the picture of Super 16 is 1.66 to 1, that of 16 mm is far from it', () => {
  const ratio = (id: '16mm' | 'super-16'): number => {
    const [{ widthMillimetres, heightMillimetres }] = GAUGES[id].cameraPicture;
    return widthMillimetres / heightMillimetres;
  };
  expect(ratio('super-16').toFixed(2)).toBe('1.66');
  expect(ratio('16mm')).toBeLessThan(1.4);
});
