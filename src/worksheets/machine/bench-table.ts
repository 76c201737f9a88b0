import { GAUGE_NAMES } from '../../core/reel/gauges.ts';
import type { ChoiceField, CountField, ListField, QuantityField } from './field-types.ts';
import { FILM_RATE, VIDEO_RATE } from './rate-ranges.ts';

// The fields of the reader's bench, a row each. Types, form, store, links and the sheets that open with
// a field all take it from here; a field that is added is one more row.

/** Places on the form of the bench page; those that end in `-more` stand behind a word. */
export type BenchPlace =
  | 'projector'
  | 'projector-more'
  | 'camera'
  | 'camera-more'
  | 'reel'
  | 'times'
  | 'prices';

/** A field that the reader fills in. */
export interface FilledRow {
  /** What it is kept with: a bench, or a reel. */
  readonly shelf: 'benches' | 'reels';
  readonly place: BenchPlace;
  /**
   * Its code in a link, which never changes and is never used again; `private` for what is the
   * workshop's own business: kept on the device, in no link, on no paper unasked.
   */
  readonly link: string;
  /** Field that says the same where the reader left this one empty. */
  readonly standIn?: string;
  /** Key, label, reading, range and help; a sheet may put its own words and narrower range over them. */
  readonly field: QuantityField | CountField | ChoiceField | ListField;
}

/** A field that follows from the reader's one choice of region. */
export interface RegionRow {
  readonly shelf: 'region';
  readonly byRegion: Readonly<Record<'25/50' | '30/60', string>>;
  readonly field: Pick<QuantityField, 'kind' | 'unit'>;
}

const money = { kind: 'quantity', unit: 'money', minimum: 0, maximum: 100_000 } as const;
/** Time for one reel. */
const workingTime = {
  kind: 'quantity',
  unit: 's',
  entryUnit: 'min',
  minimum: 0,
  maximum: 86_400,
} as const;

/** Every field of the bench, in the order of the form. */
export const BENCH_TABLE = {
  'projector.gauge': {
    shelf: 'benches',
    place: 'projector',
    link: 'pg',
    field: {
      kind: 'choice',
      label: 'Gauge it runs',
      options: GAUGE_NAMES,
      help: 'The film it is threaded for.',
    },
  },
  'projector.filmFps': {
    shelf: 'benches',
    place: 'projector',
    link: 'pf',
    // A machine with one speed: the rate in use is one that can be set.
    standIn: 'projector.filmRates',
    field: {
      ...FILM_RATE,
      label: 'Film rate',
      accepted: '18, 16 2/3 or 16,67',
      help: 'Frames per second of the film as it runs now, measured if you can.',
    },
  },
  'projector.flashesPerFrame': {
    shelf: 'benches',
    place: 'projector',
    link: 'pn',
    field: {
      kind: 'count',
      label: 'Flashes per frame',
      minimum: 1,
      maximum: 12,
      accepted: '3',
      help: 'Blades times shutter turns for one film frame. Usually 2 or 3.',
    },
  },
  'projector.openPercent': {
    shelf: 'benches',
    place: 'projector-more',
    link: 'po',
    field: {
      kind: 'quantity',
      label: 'Open fraction',
      unit: 'percent',
      minimum: 5,
      maximum: 95,
      accepted: '50 or 45 %',
      help: 'Share of the time with light in the gate: open angle of the shutter ÷ 360°. Half, if you do not know.',
    },
  },
  'projector.filmRateChoice': {
    shelf: 'benches',
    place: 'projector-more',
    link: 'pk',
    field: {
      kind: 'choice',
      label: 'Its film rate can be set',
      options: { list: 'to fixed film rates', range: 'to any rate, by a knob' },
      help: 'Fill in below what fits.',
    },
  },
  'projector.filmRates': {
    shelf: 'benches',
    place: 'projector-more',
    link: 'ps',
    standIn: 'projector.filmFps',
    field: {
      ...FILM_RATE,
      kind: 'list',
      label: 'Fixed film rates',
      longest: 40,
      accepted: '18; 24',
      help: 'All that it offers, separated by semicolons.',
    },
  },
  'projector.slowestFps': {
    shelf: 'benches',
    place: 'projector-more',
    link: 'pa',
    field: {
      ...FILM_RATE,
      label: 'Speed knob, slowest',
      accepted: '16',
      help: 'Frames per second at its lower stop.',
    },
  },
  'projector.fastestFps': {
    shelf: 'benches',
    place: 'projector-more',
    link: 'pz',
    field: {
      ...FILM_RATE,
      label: 'Speed knob, fastest',
      accepted: '20',
      help: 'Frames per second at its upper stop.',
    },
  },
  'projector.turnsPerFrame': {
    shelf: 'benches',
    place: 'projector-more',
    link: 'pt',
    field: {
      kind: 'quantity',
      label: 'Shutter turns per film frame',
      unit: 'turnsPerFrame',
      minimum: 0.25,
      maximum: 6,
      accepted: '1, 3 or 1/2',
      help: 'Turn the machine by hand, mains plug pulled, until the claw has moved once, and count.',
    },
  },
  'camera.cameraFps': {
    shelf: 'benches',
    place: 'camera',
    link: 'cf',
    standIn: 'camera.cameraRates',
    field: {
      ...VIDEO_RATE,
      label: 'Camera rate you use',
      accepted: '25, 50 or 30000/1001',
      help: 'Frames per second that the camera records.',
    },
  },
  'camera.exposureSeconds': {
    shelf: 'benches',
    place: 'camera',
    link: 'cu',
    standIn: 'camera.exposureTimes',
    field: {
      kind: 'quantity',
      label: 'Exposure time you use',
      unit: 's',
      minimum: 0.0001,
      maximum: 1,
      accepted: '1/54, 18.5 ms or 166.7°',
      help: 'As set on the camera. A shutter angle is read at the camera rate above.',
      angleOf: 'cameraFps',
    },
  },
  'camera.cameraRates': {
    shelf: 'benches',
    place: 'camera',
    link: 'cr',
    standIn: 'camera.cameraFps',
    field: {
      ...VIDEO_RATE,
      kind: 'list',
      label: 'Camera rates it offers',
      longest: 20,
      accepted: '24; 25; 30000/1001; 50',
      help: 'Every rate in its menu, separated by semicolons.',
    },
  },
  'camera.exposureTimes': {
    shelf: 'benches',
    place: 'camera',
    link: 'ce',
    field: {
      kind: 'list',
      label: 'Exposure times it offers',
      unit: 's',
      minimum: 0.0001,
      maximum: 1,
      longest: 40,
      accepted: '1/25; 1/50; 1/60',
      help: 'Separated by semicolons. Empty if you can set any time.',
    },
  },
  'camera.readoutSeconds': {
    shelf: 'benches',
    place: 'camera',
    link: 'ct',
    field: {
      kind: 'quantity',
      label: 'Readout time',
      unit: 's',
      entryUnit: 'ms',
      minimum: 0,
      maximum: 1,
      accepted: '16, 16 ms or 0',
      help: 'Time from the first row to the last, measured in the mode you record in. Empty means not measured: a whole camera frame is assumed, the worst case. 0 only for a proven global shutter; a picture without bands does not prove one.',
    },
  },
  'camera.exposureChoice': {
    shelf: 'benches',
    place: 'camera-more',
    link: 'cx',
    field: {
      kind: 'choice',
      label: 'Exposure time can be set',
      options: { steps: 'in the steps listed', free: 'to any time' },
      help: 'Some cameras offer a list, others any time or shutter angle.',
    },
  },
  'camera.sensorWidthMillimetres': {
    shelf: 'benches',
    place: 'camera-more',
    link: 'cw',
    field: {
      kind: 'quantity',
      label: 'Sensor width',
      unit: 'mm',
      minimum: 1,
      maximum: 100,
      accepted: '23.5 or 0.93 in',
      help: 'Width of the part that records, from the camera’s data sheet.',
    },
  },
  'camera.pixelsAcross': {
    shelf: 'benches',
    place: 'camera-more',
    link: 'cp',
    field: {
      kind: 'count',
      unit: 'px',
      label: 'Pixels across',
      minimum: 100,
      maximum: 20_000,
      accepted: '1920 or 3840',
      help: 'Width of the recorded picture in pixels.',
    },
  },
  'camera.lensSteps': {
    shelf: 'benches',
    place: 'camera-more',
    link: 'cl',
    field: {
      kind: 'choice',
      label: 'Opening of the lens can be set',
      options: {
        third: 'in third stops',
        half: 'in half stops',
        whole: 'in whole stops',
        free: 'to any opening, without clicks',
      },
      help: 'The clicks of the ring, or the steps of the dial.',
    },
  },
  'times.handlingSeconds': {
    shelf: 'benches',
    place: 'times',
    link: 'private',
    field: {
      ...workingTime,
      label: 'Handling of one reel',
      accepted: '15, 15 min or 1 h',
      help: 'Examine, mend, clean, thread, rewind. Time yourself on five reels. A bare number means minutes.',
    },
  },
  'times.afterWorkSeconds': {
    shelf: 'benches',
    place: 'times',
    link: 'private',
    field: {
      ...workingTime,
      label: 'After-work for one reel',
      accepted: '20, 20 min or 1 h',
      help: 'Whole frames, retiming, sound, checks and copies: the time that you sit there. A bare number means minutes.',
    },
  },
  'times.repeatPercent': {
    shelf: 'benches',
    place: 'times',
    link: 'private',
    field: {
      kind: 'quantity',
      label: 'Reels that must be run again',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      accepted: '10 or 5 %',
      help: 'Lost loops, wrong exposure, dirt. Count them for a month.',
    },
  },
  'times.hoursPerDay': {
    shelf: 'benches',
    place: 'times',
    link: 'private',
    field: {
      kind: 'quantity',
      label: 'Hours a day on the job',
      unit: 'h',
      minimum: 0.25,
      maximum: 24,
      accepted: '5, 7.5 or 90 min',
      help: 'What is left after post, telephone and tea.',
    },
  },
  'prices.perReel': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      ...money,
      label: 'Price of a reel',
      accepted: '4 or 4.50',
      help: 'For handling, whatever its length.',
    },
  },
  'prices.perMinute': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      ...money,
      label: 'Price of a minute',
      accepted: '1.20',
      help: 'For each minute of film at its native rate.',
    },
  },
  'prices.minuteRule': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      kind: 'choice',
      label: 'Minutes are counted',
      options: { exact: 'exactly', begun: 'each minute begun counts, reel by reel' },
      help: 'Say on the offer which of the two you use.',
    },
  },
  'prices.carrier': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      ...money,
      label: 'Price of each disc, stick or drive',
      accepted: '9 or 9.50',
      help: 'Including writing and checking it.',
    },
  },
  'prices.fixed': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      ...money,
      label: 'Fixed part',
      accepted: '10',
      help: 'Once for the job: booking in, packing, paperwork.',
    },
  },
  'prices.minimum': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      ...money,
      label: 'Minimum charge',
      accepted: '25',
      help: 'Before tax, after the discount.',
    },
  },
  'prices.taxPercent': {
    shelf: 'benches',
    place: 'prices',
    link: 'private',
    field: {
      kind: 'quantity',
      label: 'Tax',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      accepted: '0 or 19 %',
      help: 'On the sum before tax; 0 if you charge none. Your own tax rules decide.',
    },
  },
  'reel.gauge': {
    shelf: 'reels',
    place: 'reel',
    link: 'rg',
    standIn: 'projector.gauge',
    field: {
      kind: 'choice',
      label: 'Gauge',
      options: GAUGE_NAMES,
      help: 'Not said: the gauge that the projector runs.',
    },
  },
  'reel.nativeFps': {
    shelf: 'reels',
    place: 'reel',
    link: 'rf',
    field: {
      ...FILM_RATE,
      label: 'Native rate',
      accepted: '18, 16 or 24',
      help: 'Frames per second at which it was shot.',
    },
  },
  'reel.lengthMetres': {
    shelf: 'reels',
    place: 'reel',
    link: 'rl',
    field: {
      kind: 'quantity',
      label: 'Length',
      unit: 'm',
      minimum: 0.1,
      maximum: 2000,
      accepted: '15 m or 50 ft',
      help: 'A bare number means metres.',
    },
  },
  'reel.count': {
    shelf: 'reels',
    place: 'reel',
    link: 'rn',
    field: {
      kind: 'count',
      label: 'Reels like this one',
      minimum: 1,
      maximum: 10_000,
      accepted: '1 or 12',
      help: 'Reels of one gauge and about one length. Work out a mixed box in parts, and add them.',
    },
  },
  'region.mainsHz': {
    shelf: 'region',
    byRegion: { '25/50': '50', '30/60': '60' },
    field: { kind: 'quantity', unit: 'Hz' },
  },
  'region.deliveryFps': {
    shelf: 'region',
    byRegion: { '25/50': '25', '30/60': '30000/1001' },
    field: { kind: 'quantity', unit: 'fps' },
  },
} as const satisfies Readonly<Record<string, FilledRow | RegionRow>>;

type Table = typeof BENCH_TABLE;

/** Places in the description of a reader's bench that an input can open with. */
export type BenchField = keyof Table;

/** A field that the reader fills in. */
export type StoredField = {
  [Field in BenchField]: Table[Field] extends FilledRow ? Field : never;
}[BenchField];
