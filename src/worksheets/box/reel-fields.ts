import { GAUGE_NAMES } from '../../core/reel/gauges.ts';
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import type { InputSpec } from '../machine/types.ts';
import { FILM_RATE } from '../machine/rate-ranges.ts';
import { inputs as findings } from '../reel/condition-triage/inputs.ts';

// The fields of a reel in the box, a row each: table, form, file, CSV and papers take them from here.

/** Sound on or beside the film. */
export const SOUND_NAMES = {
  none: 'silent',
  magnetic: 'magnetic stripe',
  optical: 'optical track',
  separate: 'separate tape',
} as const;
export type ReelSound = keyof typeof SOUND_NAMES;

/** A line that is read by people only. */
interface WordsField {
  readonly kind: 'words';
  readonly label: string;
  readonly help: string;
  /** Several lines. */
  readonly isLong?: true;
}
/** A choice typed as text or picked; its spellings are read by {@link readGauge} and {@link readSound}. */
interface GaugeField {
  readonly kind: 'gauge';
  readonly label: string;
  readonly help: string;
}
interface SoundField {
  readonly kind: 'sound';
  readonly label: string;
  readonly help: string;
}
export type BoxField = WordsField | GaugeField | SoundField | InputSpec;

const words = (label: string, help: string, isLong?: true): WordsField => ({
  kind: 'words',
  label,
  help,
  ...(isLong === undefined ? {} : { isLong }),
});

const seconds = { kind: 'optional-quantity', unit: 's', default: '' } as const;
const yes = (label: string, help: string) =>
  ({
    kind: 'choice',
    label,
    options: { '': 'no', yes: 'yes' },
    default: '',
    help,
  }) as const;
const count = (label: string, help: string, accepted: string) =>
  ({
    kind: 'optional-quantity',
    label,
    unit: 'one',
    minimum: 0,
    maximum: 10_000_000,
    default: '',
    accepted,
    help,
  }) as const;

/** What is asked at the counter: the columns of the table. */
const COUNTER = {
  number: words(
    'No.',
    'The number on the slip in the can and on the leader; the only key to everything else.',
  ),
  boxWords: words(
    'Words on the box',
    'As they stand there, mistakes and all; “none” where there are none.',
  ),
  gauge: { kind: 'gauge', label: 'Gauge', help: 'As measured, not as written on the box.' },
  size: {
    kind: 'optional-quantity',
    label: 'Reel size',
    unit: 'm',
    minimum: 0.1,
    maximum: 2000,
    default: '',
    accepted: '50 ft or 15 m',
    help: 'How much the full reel holds. It counts as the length until one is measured.',
  },
  lengthMetres: {
    kind: 'optional-quantity',
    label: 'Length measured',
    unit: 'm',
    minimum: 0.1,
    maximum: 2000,
    default: '',
    accepted: '61 m or 200 ft',
    help: 'Of the film itself, by a counter or from the winding. A bare number means metres.',
  },
  nativeFps: {
    ...FILM_RATE,
    kind: 'optional-quantity',
    label: 'Native rate',
    default: '',
    accepted: '18, 16 or 24',
    help: 'Frames per second at which it was shot.',
  },
  sound: {
    kind: 'sound',
    label: 'Sound',
    help: 'Silent, magnetic stripe, optical track or separate tape.',
  },
} as const satisfies Readonly<Record<string, BoxField>>;

/** Everything else about a reel, by the station at which it is filled in. */
const LATER = {
  visible: words(
    'What can be seen',
    'Three words, before anything is touched: dusty, rusty can, loose.',
  ),
  can: words('Can or box', 'Kept with it, or given back at once?'),
  photo: words('Photograph no.', 'Of box, roll from the side, worst place.'),
  title: words('Title for its files', 'Short. Empty: the words on the box.'),
  year: words('Date', 'As far as it is known: 1974-08, 1974, 197x.'),
  baseEvidence: words('Base known by', 'Polariser, edge print, float test of an archive.'),
  shrinkageHead: words('Shrinkage at the head', 'With the method: hundred pitches, rule.'),
  shrinkageMiddle: words('Shrinkage in the middle', 'Past the leader, as at the head.'),
  shrinkageEnd: words('Shrinkage at the end', 'As at the head.'),
  filmFps: {
    ...FILM_RATE,
    kind: 'optional-quantity',
    label: 'Film rate measured',
    default: '',
    accepted: '16.71',
    help: 'While this reel ran, film in the gate.',
  },
  exposureSeconds: {
    ...seconds,
    label: 'Exposure time used',
    minimum: 0.0001,
    maximum: 1,
    accepted: '1/54 or 18.5 ms',
    help: 'As set on the camera.',
  },
  match: words('Match', 'What the matching worksheet says about these settings.'),
  settings: words('Other settings', 'Lens, opening, ISO, white balance, lamp, filter, flashes.'),
  isThreadReady: yes(
    'Take-up, leader and head looked at',
    'The take-up holds the reel, the leader is long enough, the head is out.',
  ),
  isCameraProven: yes(
    'Camera proven',
    'A test recording was looked at: progressive, exact rate, splits.',
  ),
  takes: words(
    'Takes and incidents',
    'Clip, time, what happened. Nothing is ever overwritten.',
    true,
  ),
  framesExpected: count('Frames expected', 'From the measured length.', '14323'),
  framesFound: count('Frames found', 'Counted in the master.', '14321'),
  framesLost: count('Frames lost', 'Cut out or torn, as noted.', '2'),
  areDoubtsExplained: yes(
    'Doubtful frames explained',
    'Unsure, dropped and doubled frames of the list are explained.',
  ),
  soundOffset: words(
    'Sound offset',
    'By how much the sound comes early or late, as the offset worksheet says.',
  ),
  files: words('Files', 'Names as they were written.', true),
  fileSets: count('Sets of the files', 'In different places; three.', '3'),
  areHashesRead: yes('Checksums read back', 'From every set.'),
  spentSeconds: {
    ...seconds,
    entryUnit: 'min',
    label: 'Your time on it',
    minimum: 0,
    maximum: 864_000,
    accepted: '35 or 1 h 10 min',
    help: 'Measured. A bare number means minutes. It is on no paper of the customer.',
  },
  who: words('Who', 'Initials of whoever worked on it.'),
  done: words('Found and mended', 'In words for its owner; it is printed on the return note.'),
  refusal: words('Not run, why', 'In words for its owner; it is printed on the return note.'),
  notes: words('Notes', 'For yourselves: on no paper of the customer.', true),
} as const satisfies Readonly<Record<string, BoxField>>;

type FindingKey = Exclude<keyof typeof findings, 'gauge'>;

/** The findings of the triage as fields of a reel; its gauge stands in the table. */
export const FINDING_KEYS = (Object.keys(findings) as (keyof typeof findings)[]).filter(
  (key): key is FindingKey => key !== 'gauge',
);

/** What the owner allows; a reel may say otherwise than its job. */
export const CONSENT_NAMES = {
  open: 'open the can and wind it',
  cleanDry: 'clean it dry',
  cleanWet: 'clean it with a liquid',
  mend: 'mend splices and holes; one or two pictures are lost at each',
  join: 'join it to other reels',
  run: 'run it through the projector',
  runAtRisk: 'run it though it is weak, at the risk written beside it',
  sendAway: 'send it to another workshop or laboratory',
} as const;
export type ConsentAct = keyof typeof CONSENT_NAMES;

export type CounterField = keyof typeof COUNTER;
export type ReelField =
  | CounterField
  | keyof typeof LATER
  | `finding.${FindingKey}`
  | `consent.${ConsentAct}`;

const consentField = (label: string): BoxField => ({
  kind: 'choice',
  label: `Consent: ${label}`,
  options: { '': 'as for the job', yes: 'yes', no: 'no', ask: 'ask first' },
  default: '',
  help: 'What its owner said about this reel alone.',
});

const prefixed = (prefix: string, fields: Readonly<Record<string, BoxField>>) =>
  Object.fromEntries(Object.entries(fields).map(([key, field]) => [`${prefix}.${key}`, field]));

/** Every field of a reel, in the order of the form. */
export const REEL_FIELDS = {
  ...COUNTER,
  ...LATER,
  ...prefixed('finding', Object.fromEntries(FINDING_KEYS.map((key) => [key, findings[key]]))),
  ...prefixed(
    'consent',
    Object.fromEntries(
      Object.entries(CONSENT_NAMES).map(([act, label]) => [act, consentField(label)]),
    ),
  ),
} as Partial<Record<ReelField, BoxField>> as Readonly<Record<ReelField, BoxField>>;

export const COUNTER_FIELDS = Object.keys(COUNTER) as readonly CounterField[];
export const REEL_FIELD_KEYS = Object.keys(REEL_FIELDS) as readonly ReelField[];

/** Fields of a station, in order. */
export const REEL_GROUPS: readonly {
  readonly legend: string;
  readonly fields: readonly ReelField[];
}[] = [
  { legend: 'At the counter', fields: ['visible', 'can', 'photo', 'title', 'year'] },
  {
    legend: 'Findings of the triage',
    fields: [
      ...FINDING_KEYS.map((key) => `finding.${key}` as const),
      'baseEvidence',
      'shrinkageHead',
      'shrinkageMiddle',
      'shrinkageEnd',
    ],
  },
  {
    legend: 'What its owner allows',
    fields: (Object.keys(CONSENT_NAMES) as ConsentAct[]).map((act) => `consent.${act}` as const),
  },
  {
    legend: 'The run',
    fields: [
      'isThreadReady',
      'isCameraProven',
      'filmFps',
      'exposureSeconds',
      'match',
      'settings',
      'takes',
    ],
  },
  {
    legend: 'The files',
    fields: [
      'framesExpected',
      'framesFound',
      'framesLost',
      'areDoubtsExplained',
      'soundOffset',
      'files',
      'fileSets',
      'areHashesRead',
    ],
  },
  { legend: 'And', fields: ['done', 'refusal', 'who', 'spentSeconds', 'notes'] },
];

const plain = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\s.,-]+/gu, '')
    .replace(/mm$/u, '')
    .replace(/film$/u, '');

/**
 * Spellings of a gauge as people type them, without spaces, dots, commas and “mm”. “8 mm” is none of
 * them: two gauges are called so, and the wrong one is torn.
 */
const GAUGE_SPELLINGS: Readonly<Record<string, GaugeId>> = {
  n8: '8mm-type-r',
  r8: '8mm-type-r',
  '8r': '8mm-type-r',
  d8: '8mm-type-r',
  st8: '8mm-type-r',
  std8: '8mm-type-r',
  reg8: '8mm-type-r',
  '8typer': '8mm-type-r',
  standard8: '8mm-type-r',
  regular8: '8mm-type-r',
  normal8: '8mm-type-r',
  double8: '8mm-type-r',
  s8: 'super-8',
  super8: 'super-8',
  '8super': 'super-8',
  '8types': 'super-8',
  '95': '9.5mm',
  '16': '16mm',
  s16: 'super-16',
  super16: 'super-16',
  '35': '35mm',
};

/** The gauge that a text names; undefined where it names none of the book. */
export function readGauge(text: string): GaugeId | undefined {
  const key = plain(text);
  const named = (Object.entries(GAUGE_NAMES) as [GaugeId, string][]).find(
    ([id, name]) => plain(name) === key || plain(id) === key,
  )?.[0];
  return named ?? (Object.hasOwn(GAUGE_SPELLINGS, key) ? GAUGE_SPELLINGS[key] : undefined);
}

const SOUND_SPELLINGS: Readonly<Record<string, ReelSound>> = {
  no: 'none',
  none: 'none',
  silent: 'none',
  mute: 'none',
  mag: 'magnetic',
  magnetic: 'magnetic',
  stripe: 'magnetic',
  striped: 'magnetic',
  opt: 'optical',
  optical: 'optical',
  tape: 'separate',
  separate: 'separate',
};

/** The sound that a text names; undefined where it names none, as where it is empty. */
export function readSound(text: string): ReelSound | undefined {
  const key = plain(text);
  const named = (Object.entries(SOUND_NAMES) as [ReelSound, string][]).find(
    ([, name]) => plain(name) === key,
  )?.[0];
  return named ?? (Object.hasOwn(SOUND_SPELLINGS, key) ? SOUND_SPELLINGS[key] : undefined);
}

/** The text as the table shows it once it is read: the book's name where it is one. */
export function tidyReelText(field: ReelField, text: string): string {
  const trimmed = text.trim();
  const gauge = field === 'gauge' ? readGauge(trimmed) : undefined;
  if (gauge !== undefined) return GAUGE_NAMES[gauge];
  const sound = field === 'sound' ? readSound(trimmed) : undefined;
  return sound === undefined ? trimmed : SOUND_NAMES[sound];
}
