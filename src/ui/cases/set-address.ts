import { CASE_LEVELS } from '../../practice/case-kind.ts';
import type { SessionLevel } from '../../practice/session.ts';
import { sitePath } from '../islands/site-path.ts';

/** What a link to a set asks for. */
export interface SetAddress {
  readonly seed: string;
  readonly level: SessionLevel;
}

const LONGEST_SEED = 40;

/**
 * Contract of the link, version 1: `/cases/?set=<seed>&level=<1, 2, 3 or all>`. Another level reads as
 * all; a link without a set opens the empty start.
 */
export function setLink(seed: string, level: SessionLevel): string {
  const query = new URLSearchParams({ set: seed, level: String(level) });
  return `${sitePath('/cases/')}?${query.toString()}`;
}

/** Reads the link; undefined where the address asks for no set. */
export function readSetAddress(query: string): SetAddress | undefined {
  const parameters = new URLSearchParams(query);
  const seed = parameters.get('set')?.trim().slice(0, LONGEST_SEED);
  if (seed === undefined || seed === '') return undefined;
  const level = CASE_LEVELS.find((each) => String(each) === parameters.get('level'));
  return { seed, level: level ?? 'all' };
}
