// What a worker can find on a reel before it is run; shared by the triage and the nitrate check.

import type { GaugeId } from './gauges/gauge.ts';

export type FilmBase = 'acetate' | 'polyester' | 'nitrate-suspected' | 'unknown';
export type TriageGauge = GaugeId | 'other';
export type AcidFinding = 'not-tested' | '0' | '1' | '1.5' | '2' | '3';
export type Smell = 'none' | 'vinegar' | 'acrid-or-sweet' | 'not-noted';
export type Brittleness = 'supple' | 'stiff' | 'cracks' | 'not-tested';
export type Mould = 'none' | 'dry-traces' | 'active' | 'not-noted';
export type PerforationDamage = 'none' | 'few' | 'many' | 'not-noted';
export type SpliceState = 'sound' | 'doubtful' | 'open' | 'not-noted';
export type Warp = 'flat' | 'slight' | 'strong' | 'not-noted';
export type Deposit = 'none' | 'white-powder' | 'sticky' | 'brown-powder' | 'not-noted';

/** What the worker found; every "not noted" counts as unknown and costs the free verdict. */
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
}
