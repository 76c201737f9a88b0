// What a worker can find on a reel before it is run; shared by the triage and the nitrate check.

import type { GaugeId } from './gauges/gauge.ts';

export type FilmBase = 'not-noted' | 'acetate' | 'polyester' | 'nitrate-suspected' | 'unknown';
export type TriageGauge = 'not-noted' | GaugeId | 'other';
// Keys that look like whole numbers would be listed first, out of their order.
export type AcidFinding =
  | 'not-tested'
  | 'level-0'
  | 'between-0-and-1'
  | 'level-1'
  | 'level-1.5'
  | 'level-2'
  | 'level-3';
export type Smell = 'not-noted' | 'none' | 'vinegar' | 'acrid-or-sweet';
export type Brittleness = 'not-tested' | 'supple' | 'stiff' | 'cracks';
export type Mould = 'not-noted' | 'none' | 'dry-traces' | 'active';
export type PerforationDamage = 'not-noted' | 'none' | 'few' | 'many';
export type SpliceState = 'not-noted' | 'sound' | 'doubtful' | 'open';
export type Warp = 'not-noted' | 'flat' | 'slight' | 'strong';
export type Deposit = 'not-noted' | 'none' | 'white-powder' | 'sticky' | 'brown-powder';
export type Stripe = 'not-noted' | 'none' | 'striped' | 'lifting';

/** What the worker found; every "not noted" and "not tested" counts against the reel. */
export interface ReelFindings {
  readonly base: FilmBase;
  readonly gauge: TriageGauge;
  /** Year of manufacture or shooting; absent when unknown. */
  readonly year?: number;
  /** Shrinkage at its upper bound, %; absent when not measured. */
  readonly shrinkagePercent?: number;
  readonly acidLevel: AcidFinding;
  readonly smell: Smell;
  readonly brittleness: Brittleness;
  readonly mould: Mould;
  readonly perforations: PerforationDamage;
  readonly splices: SpliceState;
  readonly warp: Warp;
  readonly deposit: Deposit;
  readonly stripe: Stripe;
}

/** A point of the look that can be left out; the year is no point, since nobody can look at it. */
export type LookedAt = Exclude<keyof ReelFindings, 'year'>;

const POINTS: readonly Exclude<LookedAt, 'shrinkagePercent'>[] = [
  'gauge',
  'smell',
  'deposit',
  'mould',
  'warp',
  'base',
  'brittleness',
  'acidLevel',
  'perforations',
  'splices',
  'stripe',
];

/**
 * Points of a reel that nobody has looked at, tried, tested or measured.
 *
 * Model: a list of every point with "not noted", "not tested" or no number. Exact.
 *
 * @param findings  what the worker found
 * @returns keys of the points; empty only when everything was looked at
 * @source common practice, no source
 */
export function pointsNotLookedAt(findings: ReelFindings): readonly LookedAt[] {
  const left = POINTS.filter(
    (point) => findings[point] === 'not-noted' || findings[point] === 'not-tested',
  );
  return findings.shrinkagePercent === undefined ? [...left, 'shrinkagePercent'] : left;
}
