import { FRAME_LAYOUTS, type FrameLayoutName } from '../../../core/file/frame-bytes.ts';
import { VIDEO_RATE } from '../../machine/rate-ranges.ts';
import type { InputSpecs } from '../../machine/types.ts';

type LayoutName = FrameLayoutName | 'bit-rate';

export const LAYOUT_NAMES = {
  '420-8': FRAME_LAYOUTS['420-8'].label,
  '422-8': FRAME_LAYOUTS['422-8'].label,
  v210: FRAME_LAYOUTS.v210.label,
  '422-10': FRAME_LAYOUTS['422-10'].label,
  'rgb-8': FRAME_LAYOUTS['rgb-8'].label,
  dpx: FRAME_LAYOUTS.dpx.label,
  'rgb-16': FRAME_LAYOUTS['rgb-16'].label,
  'bit-rate': 'compressed: by the bit rate',
} as const satisfies Record<LayoutName, string>;

export const inputs = {
  layout: {
    kind: 'choice',
    label: 'How pictures are stored',
    options: LAYOUT_NAMES,
    default: 'v210',
    help: 'Uncompressed sizes are exact. Of a compressed file only its bit rate tells the size.',
  },
  widthPixels: {
    kind: 'count',
    unit: 'px',
    label: 'Width',
    minimum: 16,
    maximum: 16_384,
    default: '1920',
    accepted: '1920 or 2560',
    help: 'Pixels in a line. Not used when the bit rate is given.',
  },
  heightPixels: {
    kind: 'count',
    unit: 'px',
    label: 'Height',
    minimum: 16,
    maximum: 16_384,
    default: '1080',
    accepted: '1080 or 1440',
    help: 'Lines in a frame. Not used when the bit rate is given.',
  },
  fileFps: {
    ...VIDEO_RATE,
    label: 'Frame rate of the file',
    default: '25',
    accepted: '25, 18 or 24000/1001',
    help: 'A film file at its native rate is smaller than one with repeats.',
    bench: 'region.deliveryFps',
  },
  runningSeconds: {
    kind: 'quantity',
    label: 'Running time',
    unit: 's',
    entryUnit: 'min',
    minimum: 0.04,
    maximum: 360_000,
    default: '3:20',
    accepted: '3:20, 1 h or 45 min',
    help: 'Of all reels together, at the rate of the file. A bare number means minutes.',
  },
  megabitsPerSecond: {
    kind: 'quantity',
    label: 'Bit rate of the pictures',
    unit: 'Mbps',
    minimum: 0.01,
    maximum: 100_000,
    default: '50',
    accepted: '50 or 6 MB/s',
    help: 'Average, from the settings of your encoder. Only used for compressed files.',
  },
  channels: {
    kind: 'count',
    label: 'Sound channels',
    minimum: 0,
    maximum: 16,
    default: '0',
    accepted: '0, 1 or 2',
    help: 'Uncompressed. 0 for a silent film.',
  },
  soundRate: {
    kind: 'choice',
    label: 'Sample rate',
    options: { '44100': '44 100 Hz', '48000': '48 000 Hz', '96000': '96 000 Hz' },
    default: '48000',
    help: 'Not used for a silent film.',
  },
  soundBits: {
    kind: 'choice',
    label: 'Bits of a sample',
    options: { '16': '16 bit', '24': '24 bit' },
    default: '24',
    help: 'Not used for a silent film.',
  },
} as const satisfies InputSpecs;
