import { expect, test } from 'vitest';
import { nitrateReasons } from '../../../src/core/reel/nitrate-suspicion.ts';

const old = { gauge: '35mm', year: 1958, smell: 'none', deposit: 'none' } as const;

// Crossed polarisers show polyester, but cannot tell acetate from nitrate.
test('polyester clears an old 35 mm film, acetate does not', () => {
  expect(nitrateReasons({ ...old, base: 'polyester' })).toEqual([]);
  expect(nitrateReasons({ ...old, base: 'acetate' })).toHaveLength(1);
});
