import type { UnitName } from '../../quantity/units.ts';
import type { BenchField } from './types.ts';

/** How the text in a field of the bench is read. */
export type BenchReading =
  | {
      readonly kind: 'quantity' | 'list';
      readonly unit: UnitName;
      /** Unit meant by a bare number, when it differs from `unit`. */
      readonly entryUnit?: UnitName;
    }
  | { readonly kind: 'count' | 'choice' };

/** The reading of every field; apart from labels and ranges, which only the bench page needs. */
export const BENCH_READINGS = {
  'projector.gauge': { kind: 'choice' },
  'projector.filmFps': { kind: 'quantity', unit: 'fps' },
  'projector.flashesPerFrame': { kind: 'count' },
  'projector.speedChoice': { kind: 'choice' },
  'projector.fixedSpeeds': { kind: 'list', unit: 'fps' },
  'projector.slowestFps': { kind: 'quantity', unit: 'fps' },
  'projector.fastestFps': { kind: 'quantity', unit: 'fps' },
  'projector.openFraction': { kind: 'quantity', unit: 'percent' },
  'projector.turnsPerFrame': { kind: 'quantity', unit: 'turnsPerFrame' },
  'camera.cameraFps': { kind: 'quantity', unit: 'fps' },
  'camera.exposureSeconds': { kind: 'quantity', unit: 's' },
  'camera.cameraRates': { kind: 'list', unit: 'fps' },
  'camera.exposureTimes': { kind: 'list', unit: 's' },
  'camera.exposureChoice': { kind: 'choice' },
  'camera.readoutSeconds': { kind: 'quantity', unit: 's', entryUnit: 'ms' },
  'camera.sensorWidthMillimetres': { kind: 'quantity', unit: 'mm' },
  'camera.pixelsAcross': { kind: 'count' },
  'camera.lensSteps': { kind: 'choice' },
  'times.handlingSeconds': { kind: 'quantity', unit: 's', entryUnit: 'min' },
  'times.afterWorkSeconds': { kind: 'quantity', unit: 's', entryUnit: 'min' },
  'times.repeatPercent': { kind: 'quantity', unit: 'percent' },
  'times.hoursPerDay': { kind: 'quantity', unit: 'h' },
  'prices.perReel': { kind: 'quantity', unit: 'money' },
  'prices.perMinute': { kind: 'quantity', unit: 'money' },
  'prices.minuteRule': { kind: 'choice' },
  'prices.carrier': { kind: 'quantity', unit: 'money' },
  'prices.fixed': { kind: 'quantity', unit: 'money' },
  'prices.minimum': { kind: 'quantity', unit: 'money' },
  'prices.taxPercent': { kind: 'quantity', unit: 'percent' },
  'reel.gauge': { kind: 'choice' },
  'reel.nativeFps': { kind: 'quantity', unit: 'fps' },
  'reel.lengthMetres': { kind: 'quantity', unit: 'm' },
  'reel.count': { kind: 'count' },
  'region.mainsHz': { kind: 'quantity', unit: 'Hz' },
  'region.deliveryFps': { kind: 'quantity', unit: 'fps' },
} as const satisfies Readonly<Record<BenchField, BenchReading>>;

/** A field that the reader fills in; the region's two follow from one choice. */
export type StoredField = Exclude<BenchField, `region.${string}`>;

/** Every field that is kept as typed text, in the order of the bench page. */
export const STORED_FIELDS = (Object.keys(BENCH_READINGS) as BenchField[]).filter(
  (field): field is StoredField => !field.startsWith('region.'),
);

/** A field that is the workshop's own business: kept on the device, in no link, on no paper unasked. */
export type PrivateField = Extract<StoredField, `times.${string}` | `prices.${string}`>;

export function isPrivateField(field: StoredField): field is PrivateField {
  return field.startsWith('times.') || field.startsWith('prices.');
}

/** Where the reader left a field empty, another one that says the same. */
export const STAND_INS: Partial<Readonly<Record<BenchField, StoredField>>> = {
  // A machine with one speed, a camera with one rate; the rate in use is one that can be set.
  'projector.filmFps': 'projector.fixedSpeeds',
  'projector.fixedSpeeds': 'projector.filmFps',
  'camera.cameraFps': 'camera.cameraRates',
  'camera.cameraRates': 'camera.cameraFps',
  'camera.exposureSeconds': 'camera.exposureTimes',
  'reel.gauge': 'projector.gauge',
};
