import { numberEntry } from '../../quantity/parse-number.ts';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import type { Outcome, Worksheet } from '../../worksheets/machine/types.ts';
import { FINDING_KEYS, REEL_FIELDS, type ReelField } from '../../worksheets/box/reel-fields.ts';

/** A text that a worksheet offers for a field of the reel on the table. */
export interface Offer {
  readonly field: ReelField;
  /** Label of the field, for the button. */
  readonly label: string;
  readonly text: string;
}

/** Answers of worksheets that belong into a field of a reel, by worksheet and key of the answer. */
const ANSWERS: Readonly<Record<string, Readonly<Record<string, ReelField>>>> = {
  'film-length': { lengthMetres: 'lengthMetres', frames: 'framesExpected' },
  'reel-length': { lengthMetres: 'lengthMetres' },
  stopwatch: { filmFps: 'filmFps' },
  tachometer: { filmFps: 'filmFps' },
  'speed-from-beat': { filmFps: 'filmFps' },
  'flash-match': { matchingExposureSeconds: 'exposureSeconds' },
  'match-finder': { bestExposureSeconds: 'exposureSeconds' },
  shrinkage: { mostPercent: 'finding.shrinkagePercent' },
};

/** Entries that belong into a field of a reel: what was found, not what was worked out. */
const ENTRIES: Readonly<Record<string, Readonly<Record<string, ReelField>>>> = {
  'condition-triage': Object.fromEntries(
    FINDING_KEYS.map((key) => [key, `finding.${key}` as const]),
  ),
};

/** Sheets whose sentence is kept as words. */
const SENTENCES: Readonly<Record<string, ReelField>> = {
  'flash-match': 'match',
  'sound-offset': 'soundOffset',
};

function answerText(outcome: Outcome, key: string, field: ReelField): string | undefined {
  const answer = outcome.answers[key];
  if (answer?.value === undefined || !Number.isFinite(answer.value)) return undefined;
  const value = field === 'framesExpected' ? Math.round(answer.value) : answer.value;
  const number = numberEntry(Number(value.toPrecision(7)));
  return field === 'framesExpected' ? number : `${number} ${answer.unit ?? ''}`.trim();
}

/** What this worksheet has for the reel on the table, with these entries. */
export function offersOf(
  worksheet: Worksheet,
  entries: Entries,
  outcome: Outcome,
): readonly Offer[] {
  const answers = Object.entries(ANSWERS[worksheet.id] ?? {}).map(
    ([key, field]) => [field, answerText(outcome, key, field)] as const,
  );
  const found = Object.entries(ENTRIES[worksheet.id] ?? {}).map(
    ([key, field]) => [field, entries[key]] as const,
  );
  const sentence = SENTENCES[worksheet.id];
  const words = sentence === undefined ? [] : [[sentence, outcome.verdict.sentence] as const];
  return [...answers, ...found, ...words].flatMap(([field, text]) =>
    text === undefined ? [] : [{ field, label: REEL_FIELDS[field].label, text }],
  );
}
