import { GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { FILM_RATE } from '../../machine/rate-ranges.ts';
import type { ExactOf, InputSpecs, ValuesOf } from '../../machine/types.ts';

/** How finely the samples of the file to keep are stored. */
export const KEEP_SAMPLES = {
  '10': { label: '10 bit, colour at half width (4:2:2)', bitDepth: 10, sampling: '4:2:2' },
  '8': { label: '8 bit, colour at half width and height (4:2:0)', bitDepth: 8, sampling: '4:2:0' },
  '16': { label: '16 bit, red, green and blue in full', bitDepth: 16, sampling: '4:4:4' },
} as const;

export const inputs = {
  gauge: {
    kind: 'choice',
    label: 'Kind of film',
    options: GAUGE_NAMES,
    default: 'super-8',
    help: 'We find it on the film itself; the box may be wrong.',
    bench: 'reel.gauge',
  },
  lengthMetres: {
    kind: 'quantity',
    label: 'Length of the film',
    unit: 'm',
    minimum: 0.1,
    maximum: 2000,
    default: '50 ft',
    accepted: '50 ft or 15 m',
    help: 'A small reel as it came from the camera is 50 ft or 15 m. A bare number means metres.',
    bench: 'reel.lengthMetres',
  },
  nativeFps: {
    ...FILM_RATE,
    label: 'Pictures a second, as it was filmed',
    default: '18',
    accepted: '18, 16 or 24',
    help: 'Standard 8 usually 16, Super 8 usually 18, with sound 18 or 24; 16 mm sound film 24.',
    bench: 'reel.nativeFps',
  },
  deliveryFps: {
    kind: 'quantity',
    label: 'Pictures a second of your television',
    unit: 'fps',
    minimum: 10,
    maximum: 120,
    default: '25',
    accepted: '25, 30 or 30000/1001',
    help: '25 or 50 in Europe and most of the world, 30 or 60 in America and Japan.',
    bench: 'region.deliveryFps',
  },
  sound: {
    kind: 'choice',
    label: 'Sound',
    options: { silent: 'silent film', sound: 'film with sound' },
    default: 'silent',
    help: 'A brown stripe or a wavy line along the edge means sound.',
  },
  keepWidth: {
    kind: 'count',
    label: 'File to keep: pixels across',
    minimum: 16,
    maximum: 16_384,
    default: '2048',
    accepted: '2048 or 1440',
    help: 'The workshop knows. 2048 × 1556 in 10 bit is what a large library asks for of 8 mm and 16 mm film.',
  },
  keepHeight: {
    kind: 'count',
    label: 'File to keep: lines',
    minimum: 16,
    maximum: 16_384,
    default: '1556',
    accepted: '1556 or 1080',
    help: 'Height of the same picture.',
  },
  keepSamples: {
    kind: 'choice',
    label: 'File to keep: how finely it is stored',
    options: {
      '10': KEEP_SAMPLES['10'].label,
      '8': KEEP_SAMPLES['8'].label,
      '16': KEEP_SAMPLES['16'].label,
    },
    default: '10',
    help: 'No finer than the camera records. More bits leave room to mend faded colour later.',
  },
  megabitsPerSecond: {
    kind: 'quantity',
    label: 'File to watch: data rate',
    unit: 'Mbps',
    minimum: 0.1,
    maximum: 10_000,
    default: '20',
    accepted: '20 or 10 Mbit/s',
    help: 'The workshop knows: 10 to 30 is usual for watching.',
  },
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
export type Exact = ExactOf<typeof inputs>;
