import type { FilmFaults } from './film-faults.ts';
import { GRAIN_PARTS } from './grain.ts';

/**
 * Share of the grain that a lens leaves in each column, in parts of a code value: out of focus it goes
 * first.
 *
 * @param width  columns
 */
export function keptByColumn(width: number, { soft, softSide, warp }: FilmFaults): Float32Array {
  const blur = 7 * (soft + warp * 0.25);
  return Float32Array.from({ length: width }, (_, column) => {
    const aside = 9 * softSide * Math.max(0, column / width - 0.35);
    return 1 / (1 + blur + aside) / GRAIN_PARTS;
  });
}
