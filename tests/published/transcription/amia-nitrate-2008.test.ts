import { expect, test } from 'vitest';
import { nitrateReasons } from '../../../src/core/reel/nitrate-suspicion.ts';

const sound = { base: 'unknown', smell: 'none', deposit: 'none', gauge: '35mm' } as const;

// American film after 1950 cannot be nitrate; in Europe rarely up to the early 1960s.
test.each([1950, 1955, 1961])(
  '35 mm film of %i is still suspected, since it may be European',
  (year) => {
    expect(nitrateReasons({ ...sound, year })).toHaveLength(1);
  },
);

test.each([1965, 1975])('35 mm film of %i is not', (year) => {
  expect(nitrateReasons({ ...sound, year })).toEqual([]);
});
