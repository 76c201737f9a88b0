import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

// 16 mm silent raw stock, as reproduced in Offenhauser, page 106.
test('the gauge table holds the printed values', () => {
  const { pitch, perforation } = GAUGES['16mm'];
  expect(pitch.long).toMatchObject({ millimetres: 7.62, toleranceMillimetres: 0.013 });
  expect(pitch.long.hundredPitches).toMatchObject({ millimetres: 762, toleranceMillimetres: 0.76 });
  expect(perforation.width.millimetres).toBe(1.83);
  expect(perforation.height.millimetres).toBe(1.27);
  expect(perforation.edgeDistance?.millimetres).toBe(0.91);
});
