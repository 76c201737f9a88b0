import type Fraction from 'fraction.js';
import type { ReelAct, Consent, ReelFacts } from '../../core/job/reel-states.ts';
import { reelFileKey } from '../../core/job/reel-file-name.ts';
import type { CountedReel } from '../../core/job/job-totals.ts';
import { triageReel, type Triage } from '../../core/reel/condition-triage.ts';
import { gaugeFitsProjector } from '../../core/reel/gauge-fits-projector.ts';
import { GAUGES } from '../../core/reel/gauges.ts';
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import type { ReelFindings } from '../../core/reel/reel-findings.ts';
import { quotable } from '../../quantity/typed-text.ts';
import { evaluate, parseEntry, type Entries } from '../machine/evaluate.ts';
import { worksheet as triageSheet } from '../reel/condition-triage/worksheet.ts';
import { inputs as triageInputs } from '../reel/condition-triage/inputs.ts';
import type { Job, Reel } from './job.ts';
import { JOB_FIELDS, type JobField } from './job-fields.ts';
import {
  CONSENT_NAMES,
  FINDING_KEYS,
  readGauge,
  readSound,
  REEL_FIELDS,
  type BoxField,
  type ConsentAct,
  type ReelField,
} from './reel-fields.ts';

interface NumberRead {
  readonly value: number;
  readonly exact: Fraction;
}

/** The number in a field; undefined where it is empty or cannot be read. */
export function numberIn(field: BoxField, text = ''): NumberRead | undefined {
  if (field.kind !== 'optional-quantity' && field.kind !== 'quantity') return undefined;
  const read = parseEntry(field, text);
  return read.ok && read.value.value !== undefined ? (read.value as NumberRead) : undefined;
}

/** The number in a field of a reel. */
export function reelNumber(reel: Reel, field: ReelField): NumberRead | undefined {
  return numberIn(REEL_FIELDS[field], reel.texts[field]);
}

/** The number in a field of a job. */
export function jobNumber(job: Job, field: JobField): NumberRead | undefined {
  return numberIn(JOB_FIELDS[field], job.texts[field]);
}

/** “8 mm” without another word. */
const isEitherEight = (text: string): boolean => /^\W*8\W*(?:mm)?\W*$/iu.test(text);

/** Nothing is said yet, or one of two gauges that any bench knows: no reason to fear a third. */
const isGaugeOpen = (text: string): boolean => text.trim() === '' || isEitherEight(text);

/** Message beside a field whose text cannot be used; undefined when it is in order or empty. */
export function fieldMessage(field: BoxField, text: string): string | undefined {
  if (text.trim() === '' || field.kind === 'words') return undefined;
  if (field.kind === 'gauge') {
    if (readGauge(text) !== undefined) return undefined;
    return isEitherEight(text)
      ? '“8 mm” is the name of two gauges. Look at the holes: Standard 8 or Super 8?'
      : `“${quotable(text)}” is no gauge of the book. Try Standard 8, Super 8, 9.5 or 16 mm.`;
  }
  if (field.kind === 'sound') {
    return readSound(text) === undefined
      ? `“${quotable(text)}” is not read. Try silent, magnetic, optical or tape.`
      : undefined;
  }
  const read = parseEntry(field, text);
  return read.ok ? undefined : read.reason;
}

/**
 * What follows from a reel or a job alone is worked out once for each state of it: a box may hold
 * hundreds, and each reel asks its job.
 */
function onceForEach<Item extends Reel | Job, Result>(
  work: (item: Item) => Result,
): (item: Item) => Result {
  const known = new WeakMap<Item, { readonly result: Result }>();
  return (item) => {
    const found = known.get(item) ?? { result: work(item) };
    known.set(item, found);
    return found.result;
  };
}

/** The gauge of a reel, where one is named. */
export const gaugeOf = onceForEach((reel: Reel): GaugeId | undefined =>
  readGauge(reel.texts.gauge ?? ''),
);

/** The reel as it is counted: its measured length, or else the size of its reel; undefined without both. */
export const countedReel = onceForEach((reel: Reel): CountedReel | undefined => {
  const gauge = gaugeOf(reel);
  const metres = reelNumber(reel, 'lengthMetres') ?? reelNumber(reel, 'size');
  if (gauge === undefined || metres === undefined) return undefined;
  const native = reelNumber(reel, 'nativeFps');
  const run = reelNumber(reel, 'filmFps');
  return {
    gauge,
    lengthMillimetres: metres.exact.mul(1000),
    ...(native === undefined ? {} : { nativeFps: native.exact }),
    ...(run === undefined ? {} : { runFps: run.value }),
  };
});

/** Entries of the triage worksheet for this reel. */
export function triageEntries(reel: Reel): Entries {
  const found = FINDING_KEYS.map((key) => [
    key,
    reel.texts[`finding.${key}`] ?? triageInputs[key].default,
  ]);
  return {
    ...(Object.fromEntries(found) as Entries),
    gauge: gaugeOf(reel) ?? (isGaugeOpen(reel.texts.gauge ?? '') ? 'not-noted' : 'other'),
  };
}

export interface JudgedReel {
  readonly triage: Triage;
  readonly findings: ReelFindings;
  /** The sentence of the worksheet. */
  readonly sentence: string;
}

/** A finding that cannot be read counts as one that nobody made. */
function readFindings(entries: Entries): ReelFindings {
  const read = Object.entries(triageInputs).flatMap(([key, spec]) => {
    const { ok, ...rest } = parseEntry(spec, entries[key] ?? spec.default);
    const value = ok && 'value' in rest ? rest.value.value : spec.default;
    return value === undefined || value === '' ? [] : [[key, value] as const];
  });
  // The inputs of the sheet have the keys and values of the findings: its own `find` hands them on.
  return Object.fromEntries(read) as unknown as ReelFindings;
}

/** The triage of a reel by its findings. */
export const judgedReel = onceForEach((reel: Reel): JudgedReel => {
  const entries = triageEntries(reel);
  const findings = readFindings(entries);
  const triage = triageReel(findings);
  const { outcome } = evaluate(triageSheet, entries);
  return {
    triage,
    findings,
    sentence: outcome?.verdict.sentence ?? 'A finding cannot be read: correct it first.',
  };
});

/** What the owner said about one act: the reel’s own word, or else that of the job. */
export function consentTo(job: Job, reel: Reel, act: ConsentAct): Consent {
  const own = reel.texts[`consent.${act}`] ?? '';
  const said = own === '' ? (job.texts[`consent.${act}`] ?? '') : own;
  return said === 'yes' || said === 'no' || said === 'ask' ? said : 'not-said';
}

/** Sentence that refuses a reel on this projector; undefined when it fits or a gauge is not said. */
export function projectorRefusal(reel: Reel, projectorGauge: string): string | undefined {
  const gauge = gaugeOf(reel);
  if (gauge === undefined || !Object.hasOwn(GAUGES, projectorGauge)) return undefined;
  const { level, sentence } = gaugeFitsProjector(gauge, projectorGauge as GaugeId);
  return level === 'stop' ? sentence : undefined;
}

const sharedKeys = new WeakMap<Job, ReadonlySet<string>>();

/** Keys of files that more than one reel of the job would have; worked out once for each state of it. */
function keysOfSeveral(job: Job): ReadonlySet<string> {
  const known = sharedKeys.get(job);
  if (known !== undefined) return known;
  const seen = new Set<string>();
  const several = new Set<string>();
  for (const { texts } of job.reels) {
    if ((texts.number ?? '').trim() === '') continue;
    const key = reelFileKey(texts.number ?? '');
    if (seen.has(key)) several.add(key);
    seen.add(key);
  }
  sharedKeys.set(job, several);
  return several;
}

/** Whether no other reel of the job has this number; one without a number shares none. */
export function isNumberItsOwn(job: Job, { texts }: Reel): boolean {
  const number = (texts.number ?? '').trim();
  return number === '' || !keysOfSeveral(job).has(reelFileKey(number));
}

const isYes = (text: string | undefined): boolean => text === 'yes';

/** Counts in, and counts out and elsewhere. */
export interface ReelBalance {
  readonly countIn: number;
  readonly countOut: number;
  readonly countElsewhere: number;
  readonly isBalanced: boolean;
}

/** Whether every reel that came in went back or stands elsewhere, as the job says. */
export const reelBalance = onceForEach((job: Job): ReelBalance => {
  const countIn = job.reels.length;
  const countOut = job.reels.filter(
    ({ state }) => state === 'returned' || state === 'closed',
  ).length;
  const countElsewhere = jobNumber(job, 'elsewhereCount')?.value ?? 0;
  return { countIn, countOut, countElsewhere, isBalanced: countIn === countOut + countElsewhere };
});

/** What is known of a reel, for the rules of its way. Whatever was not said counts against it. */
export function reelFacts(job: Job, reel: Reel, projectorGauge: string): ReelFacts {
  const { triage, findings } = judgedReel(reel);
  const gauge = gaugeOf(reel);
  const { acidLevel, mould, deposit, brittleness, warp, splices, perforations } = findings;
  const isSaid = gauge !== undefined && Object.hasOwn(GAUGES, projectorGauge);
  const acts = Object.keys(CONSENT_NAMES) as ReelAct[];
  return {
    isNumberItsOwn: isNumberItsOwn(job, reel),
    hasNumber: (reel.texts.number ?? '').trim() !== '',
    hasBoxWords: (reel.texts.boxWords ?? '').trim() !== '',
    hasSmallGauge: gauge !== undefined && gauge !== '35mm',
    mayBeNitrate: triage.verdict === 'do-not-open',
    verdict: triage.verdict,
    notLookedAtCount: triage.notLookedAt.length,
    isForOthers:
      acidLevel === 'level-2' ||
      acidLevel === 'level-3' ||
      mould === 'active' ||
      (deposit !== 'none' && deposit !== 'not-noted'),
    isShrinkageMeasured: findings.shrinkagePercent !== undefined,
    isUnfitToRun:
      brittleness === 'cracks' ||
      warp === 'strong' ||
      splices === 'open' ||
      perforations === 'many',
    isStriped: findings.stripe !== 'none',
    consent: Object.fromEntries(
      acts.map((act) => [act, consentTo(job, reel, act)]),
    ) as ReelFacts['consent'],
    fitsProjector: isSaid ? projectorRefusal(reel, projectorGauge) === undefined : undefined,
    isThreadReady: isYes(reel.texts.isThreadReady),
    isCameraProven: isYes(reel.texts.isCameraProven),
    framesExpected: reelNumber(reel, 'framesExpected')?.value,
    framesFound: reelNumber(reel, 'framesFound')?.value,
    framesLost: reelNumber(reel, 'framesLost')?.value ?? 0,
    areDoubtsExplained: isYes(reel.texts.areDoubtsExplained),
    fileSets: reelNumber(reel, 'fileSets')?.value ?? 0,
    areHashesRead: isYes(reel.texts.areHashesRead),
    isListBalanced: reelBalance(job).isBalanced,
    isSigned: isYes(job.texts.isSigned),
  };
}
