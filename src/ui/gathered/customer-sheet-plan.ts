import { fieldsOf, FILM_FIELDS, fromFields, STORAGE_FIELDS, type Plan } from './plan.ts';

const PRICE_FIELDS = [
  'pricePerReel',
  'pricePerMinute',
  'minuteRule',
  'carrierCount',
  'carrierPrice',
  'fixedPrice',
  'discountPercent',
  'minimumCharge',
  'taxPercent',
] as const;

/** What the customer is told and can choose, in plain words. */
export const CUSTOMER_SHEET: Plan = {
  id: 'customer-sheet',
  title: 'About your film',
  blanks: ['For', 'From', 'Reel', 'Date'],
  fields: {
    ...fieldsOf('customer-options', ...FILM_FIELDS, 'sound', ...STORAGE_FIELDS),
    reelCount: { worksheet: 'quotation', input: 'reelCount' },
    filmFps: { worksheet: 'job-time', input: 'filmFps', label: 'Film rate while recording' },
    ...fieldsOf('job-time', 'handlingSeconds', 'afterWorkSeconds', 'repeatPercent', 'hoursPerDay'),
    ...fieldsOf('quotation', ...PRICE_FIELDS),
  },
  steps: [
    {
      id: 'found',
      heading: 'What is on your reel',
      worksheet: 'film-length',
      inputs: {
        known: { text: 'length' },
        ...fromFields('lengthMetres', 'gauge'),
        filmFps: { field: 'nativeFps' },
      },
      fields: ['gauge', 'lengthMetres', 'nativeFps', 'sound', 'reelCount'],
      answers: [
        { key: 'frames', label: 'Pictures on one reel' },
        { key: 'lengthMetres', label: 'Length of one reel' },
        { key: 'runningSeconds', label: 'One reel runs for' },
      ],
      showsVerdict: false,
    },
    {
      id: 'options',
      heading: 'What you can have',
      worksheet: 'customer-options',
      inputs: {
        ...fromFields(...FILM_FIELDS, 'sound', ...STORAGE_FIELDS),
      },
      fields: ['deliveryFps', ...STORAGE_FIELDS],
      workshopFields: STORAGE_FIELDS,
      answers: [],
      showsVerdict: true,
      table: 'ticks',
    },
    {
      id: 'time',
      heading: 'How long we need',
      worksheet: 'job-time',
      inputs: {
        ...fromFields(
          'reelCount',
          'gauge',
          'lengthMetres',
          'filmFps',
          'handlingSeconds',
          'afterWorkSeconds',
          'repeatPercent',
          'hoursPerDay',
        ),
      },
      fields: ['filmFps', 'handlingSeconds', 'afterWorkSeconds', 'repeatPercent', 'hoursPerDay'],
      workshopFields: [
        'filmFps',
        'handlingSeconds',
        'afterWorkSeconds',
        'repeatPercent',
        'hoursPerDay',
      ],
      // Days, not minutes: what one reel takes of our day is the workshop's own sum.
      answers: [{ key: 'days', label: 'Working days for all reels, from the day we begin' }],
      showsVerdict: false,
      chosen: { label: 'how many days we need', otherwise: 'Ready by' },
    },
    {
      id: 'price',
      heading: 'What it costs',
      worksheet: 'quotation',
      inputs: {
        ...fromFields('reelCount', 'gauge', 'lengthMetres', 'nativeFps', ...PRICE_FIELDS),
      },
      fields: PRICE_FIELDS,
      workshopFields: PRICE_FIELDS,
      answers: [],
      showsVerdict: false,
      table: 'plain',
      chosen: { label: 'what it costs', otherwise: 'Our offer, on paper of its own, dated' },
    },
  ],
  ticks: [],
  noteLines: 3,
};
