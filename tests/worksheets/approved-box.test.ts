import { describe, expect, it } from 'vitest';
import { boxTotals } from '../../src/worksheets/box/box-totals.ts';
import type { Job, Reel, ReelTexts } from '../../src/worksheets/box/job.ts';
import {
  CONSENT_NAMES,
  REEL_FIELDS,
  REEL_FIELD_KEYS,
  tidyReelText,
  type BoxField,
  type ReelField,
} from '../../src/worksheets/box/reel-fields.ts';
import { fieldMessage, judgedReel, reelFacts } from '../../src/worksheets/box/reel-reading.ts';
import { REEL_STATES, reelStops } from '../../src/worksheets/box/reel-way.ts';
import { gaugeWarning } from '../../src/worksheets/bench/bench-warnings.ts';
import { GAUGE_IDS } from '../../src/core/reel/gauges.ts';
import { expectApproved } from '../tools/approved-text.ts';
import { constantLines, type Modules } from '../tools/constant-lines.ts';
import { drawnValue } from '../tools/drawn-value.ts';
import { makeJob, makeReel } from '../ui/box/some-box.ts';

// What the fields of the bench and of a reel say, and what is made of one reel when a single field of it
// differs: as a person read it (npm run approve writes the files again).

const modules = import.meta.glob<Modules[string]>(
  ['../../src/worksheets/{bench,box,machine}/*.ts', '../../src/worksheets/*/*.ts'],
  { eager: true },
);

/** A sound acetate reel on which everything was looked at and allowed. */
const SOUND_REEL: ReelTexts = {
  boxWords: 'Regatta 1974',
  gauge: 'Super 8',
  size: '50 ft',
  nativeFps: '18',
  sound: 'silent',
  'finding.smell': 'none',
  'finding.deposit': 'none',
  'finding.mould': 'none',
  'finding.warp': 'flat',
  'finding.base': 'acetate',
  'finding.brittleness': 'supple',
  'finding.acidLevel': 'level-0',
  'finding.shrinkagePercent': '0.2',
  'finding.perforations': 'none',
  'finding.splices': 'sound',
  'finding.stripe': 'none',
  isThreadReady: 'yes',
  isCameraProven: 'yes',
  framesExpected: '3600',
  framesFound: '3600',
  areDoubtsExplained: 'yes',
  fileSets: '3',
  areHashesRead: 'yes',
};

const BENCH = {
  'times.handlingSeconds': '15',
  'times.afterWorkSeconds': '20 min',
  'times.repeatPercent': '10',
  'prices.perReel': '4.00',
  'prices.perMinute': '1.20',
  'prices.minuteRule': 'begun',
  'prices.carrier': '9',
  'prices.fixed': '10',
  'prices.taxPercent': '19',
} as const;

const jobWith = (texts: ReelTexts): { readonly job: Job; readonly reel: Reel } => {
  const reel = makeReel(1, texts);
  const consents = Object.fromEntries(
    Object.keys(CONSENT_NAMES).map((act) => [`consent.${act}`, 'yes']),
  );
  const sums = { recordingMegabits: '100', viewingMegabits: '20', carrierCount: '1' };
  return {
    job: { ...makeJob([reel]), texts: { number: '1', isSigned: 'yes', ...consents, ...sums } },
    reel,
  };
};

/** What is made of a reel: its verdict, the facts for its way, what stops it where, and the sums. */
function linesOf(texts: ReelTexts): readonly string[] {
  const { job, reel } = jobWith(texts);
  const { triage, sentence } = judgedReel(reel);
  const stops = REEL_STATES.map((to): readonly [string, readonly string[]] => [
    to,
    reelStops(job, { ...reel, state: 'mended' }, to, 'super-8'),
  ]);
  return [
    `[${triage.verdict}] ${sentence}`,
    ...Object.entries(reelFacts(job, reel, 'super-8')).map(
      ([key, fact]) => `${key}: ${drawnValue(fact)}`,
    ),
    ...stops.flatMap(([to, reasons]) => reasons.map((reason) => `not ${to}: ${reason}`)),
    ...Object.entries(boxTotals(job, BENCH)).map(
      ([key, sum]) => `sum of ${key}: ${drawnValue(sum, { significantDigits: 8 })}`,
    ),
  ];
}

const GAUGE_TEXTS = ['', 'Super 8', 'S8', 'Standard 8', '8 mm', '9.5 mm', '16 mm', '35 mm', 'odd'];
const SOUND_TEXTS = ['', 'silent', 'magnetic', 'optical track', 'tape', 'odd'];

function textsFor(field: BoxField): readonly string[] {
  switch (field.kind) {
    case 'words':
      return ['', 'some words'];
    case 'gauge':
      return GAUGE_TEXTS;
    case 'sound':
      return SOUND_TEXTS;
    case 'choice':
      return Object.keys(field.options);
    default:
      return ['', '0', '1', '1000000000', 'many', ...field.accepted.split(/, | or /u)];
  }
}

function changeLines(key: ReelField, base: ReadonlySet<string>): readonly string[] {
  const field: BoxField = REEL_FIELDS[key];
  return textsFor(field).flatMap((text) => {
    const message = fieldMessage(field, text);
    const lines = linesOf({ ...SOUND_REEL, [key]: text }).filter((line) => !base.has(line));
    return [
      `${key} “${text}”, tidied “${tidyReelText(key, text)}”:`,
      ...(message === undefined ? [] : [`  ! ${message}`]),
      ...lines.map((line) => `  ${line}`),
    ];
  });
}

const plain = (lines: readonly string[]): string =>
  `${lines.map((line) => line.replaceAll(/[^\S\n]/gu, ' ')).join('\n')}\n`;

describe('bench and box', () => {
  it('have the fields and words that were read and approved', () => {
    expectApproved('tests/worksheets/approved-box/constants.txt', plain(constantLines(modules)));
  });

  it('make of a reel what was read and approved, whichever field differs', () => {
    const base = linesOf(SOUND_REEL);
    const known = new Set(base);
    const changes = REEL_FIELD_KEYS.flatMap((key) => changeLines(key, known));
    expect(changes.length).toBeGreaterThan(200);
    expectApproved(
      'tests/worksheets/approved-box/reel.txt',
      plain(['## A sound reel', ...base, '', '## One field changed', ...changes]),
    );
  });

  it('warn of a reel on a projector of another gauge as approved', () => {
    const lines = GAUGE_IDS.flatMap((reel) =>
      ['', ...GAUGE_IDS].map((projector) => {
        const warning = gaugeWarning(reel, projector) ?? 'no warning';
        return `${reel} on ${projector || 'a projector not said'}: ${warning}`;
      }),
    );
    expectApproved('tests/worksheets/approved-box/gauge-warnings.txt', plain(lines));
  });
});
