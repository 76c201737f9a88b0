// What the triage says in words: verdicts, the sentence on top, the cautions that go with findings.

import type { Triage } from '../../../core/reel/condition-triage.ts';
import { nitratePounds } from '../../../core/reel/nitrate-suspicion.ts';
import { formatNumber } from '../../../quantity/format.ts';
import type { LookedAt, ReelFindings } from '../../../core/reel/reel-findings.ts';
import { withSmallInitial } from '../../../quantity/sentence.ts';
import type { TriageVerdict } from '../../../core/reel/triage-rules.ts';

export const VERDICT_NAMES: Readonly<Record<TriageVerdict, string>> = {
  run: 'run',
  'run-slowly': 'run slowly, with care',
  'not-yet': 'not yet: do this first',
  'not-here': 'not on this bench',
  'do-not-open': 'do not open or run, refer to a specialist',
};

const KILOGRAMS_PER_POUND = 0.453_592_37;

/** What may stay undone on a reel that runs, and why. */
const LEFT_OUT: Partial<Readonly<Record<LookedAt, string>>> = {
  acidLevel: 'the acid test, which polyester does not need',
  shrinkagePercent: 'the shrinkage, which polyester does not need',
  stripe: 'the stripe, so look along both edges before you thread it, and clean it dry only',
};

function runSentence(notLookedAt: readonly LookedAt[]): string {
  if (notLookedAt.length === 0) {
    return 'Run it: everything was looked at and nothing speaks against it.';
  }
  const left = notLookedAt.map((point) => LEFT_OUT[point] ?? point);
  return `Run it: nothing speaks against it. Left out: ${left.join('; ')}.`;
}

/** The sentence on top of the answers. */
export function sentenceOf(triage: Triage, { gauge }: ReelFindings): string {
  const { verdict, isNitrateSuspected, reasons, steps, notLookedAt } = triage;
  if (isNitrateSuspected) {
    return 'This may be nitrate: leave it closed, keep it cool and away from any flame or lamp, and call an archive or the fire service.';
  }
  if (verdict === 'run') return runSentence(notLookedAt);
  if (verdict === 'not-yet') {
    const first = withSmallInitial(steps[0]?.what ?? '');
    return steps.length === 1
      ? `Not yet: first ${first}, then come back.`
      : `Not yet: ${steps.length} things come first, in order, beginning with: ${first}.`;
  }
  const leading = reasons.filter((reason) => reason.verdict === verdict).length;
  const reason = `${leading === 1 ? ':' : `, for ${leading} reasons, first of all:`} ${withSmallInitial(reasons[0]?.reason ?? '')}`;
  if (verdict === 'run-slowly') return `Run it slowly and with care${reason}.`;
  if (verdict === 'do-not-open') {
    return `Do not open or run it; refer it to a specialist${reason}.`;
  }
  const where =
    gauge === '35mm' || gauge === 'super-16'
      ? 'offer a workshop that has the gate for it'
      : 'offer a workshop whose machine moves film without claw and teeth';
  return `Not on this bench${reason}; ${where}.`;
}

/** Whether nitrate is suspected; without the look at gauge, base, smell and powder it stays open. */
export function nitrateWords({ isNitrateSuspected }: Triage, findings: ReelFindings): string {
  if (isNitrateSuspected) return 'suspected';
  if (findings.gauge === 'not-noted') return 'not ruled out: treat it as nitrate';
  const isOpen =
    findings.base === 'not-noted' ||
    findings.smell === 'not-noted' ||
    findings.deposit === 'not-noted';
  return isOpen ? 'not ruled out: not everything was looked at' : 'nothing speaks for it';
}

function nitrateCautions({ isNitrateSuspected }: Triage, { gauge }: ReelFindings): string[] {
  if (isNitrateSuspected) {
    return [
      'Never project, heat, post or burn-test a film that may be nitrate. Badly decayed nitrate has caught fire by itself at about 40 °C, and its fumes are poisonous.',
      `Say on the telephone how much there is: 1000 ft of 35 mm film weighs about ${nitratePounds(1000)} lb, ${formatNumber(nitratePounds(1000) * KILOGRAMS_PER_POUND, 2)} kg.`,
    ];
  }
  return gauge === 'not-noted'
    ? [
        'Until the gauge is known, treat the can as nitrate: no flame, no lamp, no heat; do not unwind it.',
      ]
    : [];
}

function stripeCautions({ stripe, base }: ReelFindings): string[] {
  if (stripe === 'none') return [];
  if (stripe === 'not-noted') {
    return ['Nobody looked for a stripe: until then clean the film dry only.'];
  }
  const decay =
    base === 'polyester' ? '' : ' Striped acetate sours sooner than other film, by practice.';
  return [`Clean striped film dry only: alcohol can loosen the stripe.${decay}`];
}

/** Cautions for these findings, gravest first. */
export function cautionsOf(findings: ReelFindings, triage: Triage): readonly string[] {
  const cautions = nitrateCautions(triage, findings);
  const { mould, acidLevel, smell, gauge, perforations } = findings;
  if (mould === 'active' || mould === 'dry-traces') {
    cautions.push(
      'Mould harms the lungs, and the harm adds up: nitrile gloves, a mask of class FFP2 or FFP3, eye protection; bag what you throw away, and see a doctor if a rash or asthma comes.',
    );
  }
  if (smell === 'vinegar' || acidLevel === 'level-2' || acidLevel === 'level-3') {
    cautions.push(
      'Acid vapour irritates eyes and lungs: open the can outdoors or under extraction, with gloves.',
    );
  }
  if (triage.isNitrateSuspected) return cautions;
  if (triage.verdict === 'run-slowly') {
    cautions.push(
      'Slowly means by cool light. A hot lamp heats slow film longer, and below about 12 to 14 frames/s many machines drop a heat flap (from memory): with a hot lamp keep to the usual rate.',
    );
  }
  if (gauge === '9.5mm' && (perforations === 'few' || perforations === 'many')) {
    cautions.push('On 9.5 mm the hole lies between the pictures: a torn one costs a picture.');
  }
  if (triage.verdict !== 'do-not-open') cautions.push(...stripeCautions(findings));
  return cautions;
}
