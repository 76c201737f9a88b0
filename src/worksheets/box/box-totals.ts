import Fraction from 'fraction.js';
import type { Quotation } from '../../core/customer/price-lines.ts';
import {
  jobBytes,
  jobQuotation,
  jobSeconds,
  reelSum,
  type CountedReel,
  type ReelSum,
} from '../../core/job/job-totals.ts';
import { BENCH_INPUTS } from '../bench/bench-inputs.ts';
import type { StoredField } from '../machine/bench-table.ts';
import { parseEntry } from '../machine/evaluate.ts';
import type { Job, Reel } from './job.ts';
import { countedReel, jobNumber, reelNumber } from './reel-reading.ts';

/** Texts of the bench in use. */
type BenchTexts = Partial<Readonly<Record<StoredField, string>>>;

/** What all reels of a job come to; what is not known of a reel is counted, never guessed. */
export interface BoxTotals {
  readonly reelCount: number;
  readonly lengthMetres: number;
  readonly frames: number;
  readonly runningSeconds: number;
  /** Reels without gauge or length: in none of the sums. */
  readonly uncountedReels: number;
  /** Reels whose length is that of the reel, not measured. */
  readonly unmeasuredReels: number;
  /** Counted reels without a native rate: in no sum of time. */
  readonly ratelessReels: number;
  /** Bytes of one set of the files; absent while no rate of a file is typed. */
  readonly bytes?: number;
  /** Working time by your own times for a reel; absent while they are not on the bench. */
  readonly plannedSeconds?: number;
  /** Your measured time so far, and on how many reels. */
  readonly spentSeconds: number;
  readonly spentReels: number;
  /** By your own price list; absent while no price is on the bench. */
  readonly quotation?: Quotation;
}

interface Counted {
  readonly reel: Reel;
  readonly counted: CountedReel;
  readonly sums: ReelSum;
  readonly isMeasured: boolean;
}

const counts = new WeakMap<Reel, { readonly found: Counted | undefined }>();

/** A reel with its own sums, worked out once for each state of it. */
function countedOnce(reel: Reel): Counted | undefined {
  const known = counts.get(reel);
  if (known !== undefined) return known.found;
  const counted = countedReel(reel);
  const isMeasured = reelNumber(reel, 'lengthMetres') !== undefined;
  const found =
    counted === undefined ? undefined : { reel, counted, sums: reelSum(counted), isMeasured };
  counts.set(reel, { found });
  return found;
}

const sum = (values: readonly Fraction[]): Fraction =>
  values.reduce((total, value) => total.add(value), new Fraction(0));

function benchNumber(bench: BenchTexts, field: StoredField): Fraction | undefined {
  const text = bench[field]?.trim() ?? '';
  if (text === '') return undefined;
  const read = parseEntry(BENCH_INPUTS[field], text);
  return read.ok ? (read.value.exact as Fraction | undefined) : undefined;
}

/** Reels that are to be run and charged by the minute: not those that stand aside for good. */
function isOffered({ state }: Reel): boolean {
  return state !== 'refused' && state !== 'referred' && state !== 'quarantine';
}

/** The offer by the price list of the bench; undefined while no price is on it. */
export function boxQuotation(job: Job, bench: BenchTexts): Quotation | undefined {
  const price = (field: StoredField): Fraction | undefined => benchNumber(bench, field);
  const [perReel, perMinute] = [price('prices.perReel'), price('prices.perMinute')];
  const [perCarrier, fixed] = [price('prices.carrier'), price('prices.fixed')];
  if ([perReel, perMinute, perCarrier, fixed].every((each) => each === undefined)) return undefined;
  const offered = job.reels.filter(isOffered);
  const seconds = offered.flatMap((reel) => {
    return countedOnce(reel)?.sums.runningSeconds ?? [];
  });
  const none = new Fraction(0);
  return jobQuotation(
    offered.length,
    seconds,
    Math.round(jobNumber(job, 'carrierCount')?.value ?? 0),
    {
      ...(perReel === undefined ? {} : { perReel }),
      ...(perMinute === undefined ? {} : { perMinute }),
      ...(perCarrier === undefined ? {} : { perCarrier }),
      ...(fixed === undefined ? {} : { fixed }),
      minuteRule: bench['prices.minuteRule'] === 'begun' ? 'begun' : 'exact',
    },
    {
      discountPercent: jobNumber(job, 'discountPercent')?.exact ?? none,
      minimumCharge: price('prices.minimum') ?? none,
      taxPercent: price('prices.taxPercent') ?? none,
    },
  );
}

function plannedSeconds(counted: readonly Counted[], bench: BenchTexts): number | undefined {
  const handling = benchNumber(bench, 'times.handlingSeconds');
  const afterWork = benchNumber(bench, 'times.afterWorkSeconds');
  if (handling === undefined || afterWork === undefined) return undefined;
  const toRun = counted.filter(({ reel }) => isOffered(reel)).map((each) => each.counted);
  return jobSeconds(toRun, {
    handlingSeconds: handling.valueOf(),
    afterWorkSeconds: afterWork.valueOf(),
    repeatPercent: benchNumber(bench, 'times.repeatPercent')?.valueOf() ?? 0,
  });
}

/** What all reels of a job come to, with the price list and the times of the bench in use. */
export function boxTotals(job: Job, bench: BenchTexts): BoxTotals {
  const counted = job.reels.flatMap((reel) => countedOnce(reel) ?? []);
  const sums = counted.map((each) => each.sums);
  const seconds = sums.flatMap(({ runningSeconds }) => runningSeconds ?? []);
  const rates = (['recordingMegabits', 'masterMegabits', 'viewingMegabits'] as const).flatMap(
    (field) => jobNumber(job, field)?.value ?? [],
  );
  const spent = job.reels.flatMap((reel) => reelNumber(reel, 'spentSeconds')?.value ?? []);
  const planned = plannedSeconds(counted, bench);
  const offer = boxQuotation(job, bench);
  return {
    reelCount: job.reels.length,
    lengthMetres: sum(counted.map((each) => each.counted.lengthMillimetres))
      .div(1000)
      .valueOf(),
    frames: Math.round(sum(sums.map(({ frames }) => frames)).valueOf()),
    runningSeconds: sum(seconds).valueOf(),
    uncountedReels: job.reels.length - counted.length,
    unmeasuredReels: counted.filter(({ isMeasured }) => !isMeasured).length,
    ratelessReels: sums.length - seconds.length,
    ...(rates.length === 0
      ? {}
      : {
          bytes: jobBytes(
            seconds,
            rates.map((megabits) => megabits * 1e6),
          ),
        }),
    ...(planned === undefined ? {} : { plannedSeconds: planned }),
    spentSeconds: spent.reduce((total, value) => total + value, 0),
    spentReels: spent.length,
    ...(offer === undefined ? {} : { quotation: offer }),
  };
}
