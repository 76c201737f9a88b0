import { CONSENT_NAMES, type BoxField, type ConsentAct } from './reel-fields.ts';

// The fields of a job, a row each; papers, form and file take them from here.

const words = (label: string, help: string, isLong?: true): BoxField => ({
  kind: 'words',
  label,
  help,
  ...(isLong === undefined ? {} : { isLong }),
});

const rate = (label: string): BoxField => ({
  kind: 'optional-quantity',
  label,
  unit: 'Mbps',
  minimum: 0,
  maximum: 100_000,
  default: '',
  accepted: '25 or 100',
  help: 'On average, from a file of yours. Empty: these files are not counted.',
});

const consent = Object.fromEntries(
  Object.entries(CONSENT_NAMES).map(([act, label]): [string, BoxField] => [
    `consent.${act}`,
    {
      kind: 'choice',
      label: label.replace(/^./u, (letter) => letter.toUpperCase()),
      options: { '': 'not said', yes: 'yes', no: 'no', ask: 'ask first' },
      default: '',
      help: 'For all reels, unless a reel says otherwise. No consent, no touch.',
    },
  ]),
) as Readonly<Record<`consent.${ConsentAct}`, BoxField>>;

/** Every field of a job, in the order of the form. */
export const JOB_FIELDS = {
  number: words('Job no.', 'Year and running number: 2026-014.'),
  workshop: words(
    'Your workshop',
    'Name and address, as they stand on your papers. A new job takes them from the one before.',
  ),
  customer: words('Customer', 'Name and address, as on the receipt.'),
  contact: words('Telephone or mail', 'How to reach them.'),
  secondContact: words('Second contact', 'Who is asked about reels that nobody fetches.'),
  returnWay: words('Goes back', 'Fetched, parcel, by whom.'),
  received: words('Received on', 'The day.'),
  offerBy: words('Offer promised by', 'The day of the offer, not of the delivery.'),
  terms: words(
    'Your terms',
    'Storage, liability, unclaimed reels. Have them checked by someone who knows your law.',
    true,
  ),
  validUntil: words('Offer valid until', 'The day.'),
  currency: words(
    'Currency',
    'As it stands on your offers. A new job takes it from the one before.',
  ),
  discountPercent: {
    kind: 'optional-quantity',
    label: 'Discount',
    unit: 'percent',
    minimum: 0,
    maximum: 100,
    default: '',
    accepted: '10 %',
    help: 'On the sum of the lines.',
  },
  carrierCount: {
    kind: 'optional-quantity',
    label: 'Discs, sticks or drives',
    unit: 'one',
    minimum: 0,
    maximum: 10_000,
    default: '',
    accepted: '1',
    help: 'How many are handed over.',
  },
  recordingMegabits: rate('Recording'),
  masterMegabits: rate('Master'),
  viewingMegabits: rate('Copy to watch'),
  refusedReels: words(
    'If a reel cannot be run',
    'Goes back, to an archive; thrown away never without a signature.',
  ),
  deleteOn: words('Files kept until', 'The day on which your own copies are deleted.'),
  elsewhereCount: {
    kind: 'optional-quantity',
    label: 'Reels elsewhere',
    unit: 'one',
    minimum: 0,
    maximum: 10_000,
    default: '',
    accepted: '1',
    help: 'Not given back now: at an archive, in quarantine, at another workshop.',
  },
  isSigned: {
    kind: 'choice',
    label: 'Return note signed',
    options: { '': 'no', yes: 'yes' },
    default: '',
    help: 'By the customer.',
  },
  nextCheck: words('Next check', 'The year in which files and film are looked at again.'),
  notes: words('Notes', 'About the job, for yourself.', true),
  ...consent,
} as const satisfies Readonly<Record<string, BoxField>>;

export type JobField = keyof typeof JOB_FIELDS;
export const JOB_FIELD_KEYS = Object.keys(JOB_FIELDS) as readonly JobField[];

export const JOB_GROUPS: readonly {
  readonly legend: string;
  readonly fields: readonly JobField[];
}[] = [
  {
    legend: 'Customer and return',
    fields: [
      'workshop',
      'customer',
      'contact',
      'secondContact',
      'returnWay',
      'received',
      'offerBy',
      'deleteOn',
      'nextCheck',
    ],
  },
  {
    legend: 'What the customer allows',
    fields: [
      ...(Object.keys(CONSENT_NAMES) as ConsentAct[]).map((act) => `consent.${act}` as const),
      'refusedReels',
    ],
  },
  {
    legend: 'Files and offer',
    fields: [
      'recordingMegabits',
      'masterMegabits',
      'viewingMegabits',
      'carrierCount',
      'discountPercent',
      'currency',
      'validUntil',
    ],
  },
  { legend: 'Terms, return and notes', fields: ['terms', 'elsewhereCount', 'isSigned', 'notes'] },
];
