import {
  binaryGigabytes,
  bitRateBytes,
  frameBitsPerSecond,
  framesInTime,
  soundBitsPerSecond,
} from '../../../core/file/file-size.ts';
import { FRAME_LAYOUTS, type FrameLayoutName } from '../../../core/file/frame-bytes.ts';
import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../../../quantity/format.ts';
import { bytesAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { frameSizeSum } from '../frame-size-sum.ts';
import { defineWorksheet } from '../../machine/types.ts';

type LayoutName = FrameLayoutName | 'bit-rate';

const LAYOUT_NAMES = {
  '420-8': FRAME_LAYOUTS['420-8'].label,
  '422-8': FRAME_LAYOUTS['422-8'].label,
  v210: FRAME_LAYOUTS.v210.label,
  '422-10': FRAME_LAYOUTS['422-10'].label,
  'rgb-8': FRAME_LAYOUTS['rgb-8'].label,
  dpx: FRAME_LAYOUTS.dpx.label,
  'rgb-16': FRAME_LAYOUTS['rgb-16'].label,
  'bit-rate': 'compressed: by the bit rate',
} as const satisfies Record<LayoutName, string>;

interface Entries {
  readonly layout: LayoutName;
  readonly widthPixels: number;
  readonly heightPixels: number;
  readonly fileFps: number;
  readonly runningSeconds: number;
  readonly megabitsPerSecond: number;
  readonly channels: number;
  readonly soundRate: '44100' | '48000' | '96000';
  readonly soundBits: '16' | '24';
}

function sizesOf(entries: Entries) {
  const { layout, fileFps, runningSeconds } = entries;
  const frames = framesInTime(runningSeconds, fileFps);
  const soundRate = soundBitsPerSecond(
    Number(entries.soundRate),
    Number(entries.soundBits),
    entries.channels,
  );
  const frameBytes =
    layout === 'bit-rate'
      ? bitRateBytes(1 / fileFps, entries.megabitsPerSecond * 1e6)
      : FRAME_LAYOUTS[layout].frameBytes(entries.widthPixels, entries.heightPixels);
  const soundBytes = bitRateBytes(runningSeconds, soundRate);
  const pictureBytes = frameBytes * frames;
  return { frames, frameBytes, pictureBytes, soundBytes, soundRate };
}

export const worksheet = defineWorksheet({
  id: 'file-size',
  title: 'File size',
  question: 'How large will this file be?',
  chapter: 'file/files',
  inputs: {
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
      kind: 'quantity',
      label: 'Frame rate of the file',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
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
  },
  model:
    'Uncompressed: bytes of one frame as its layout prescribes, times frames. v210 fills every line up to 128 bytes; a DPX frame spends four bytes on a pixel and brings its header of 2,048 bytes. Sound: rate × bits × channels. GB are decimal, as on discs and drives. The wrapper of a video file adds a little, seldom above 1 %.',
  compute(entries) {
    const { frames, frameBytes, pictureBytes, soundBytes, soundRate } = sizesOf(entries);
    const totalBytes = pictureBytes + soundBytes;
    const pictureRate = frameBitsPerSecond(frameBytes, entries.fileFps);
    return {
      verdict: {
        level: 'note',
        sentence: `${formatDuration(entries.runningSeconds)} take ${formatBytes(totalBytes)}.`,
      },
      answers: {
        totalBytes: bytesAnswer('Whole file', totalBytes),
        binaryGigabytes: wordsAnswer(
          'As many computers count it',
          `${formatNumber(binaryGigabytes(totalBytes))} GiB`,
        ),
        frames: quantityAnswer('Frames', frames, 'frames'),
        frameBytes: bytesAnswer('One frame', frameBytes, {
          note: entries.layout === 'bit-rate' ? 'on average' : 'exactly',
        }),
        pictureRate: quantityAnswer('Rate of the pictures', pictureRate / 1e6, 'Mbps', 4),
        pictureBytes: bytesAnswer('Pictures', pictureBytes),
        soundBytes: bytesAnswer('Sound', soundBytes),
        bytesPerHour: bytesAnswer('One hour of it', ((pictureRate + soundRate) / 8) * 3600),
      },
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { layout, fileFps } = entries;
    const rate = formatQuantity(fileFps, 'fps', 6);
    return [
      {
        words: 'Running time times frame rate gives the frames.',
        sum: `${formatDuration(entries.runningSeconds)} × ${rate} = ${text('frames')}`,
      },
      layout === 'bit-rate'
        ? {
            words: 'Bit rate divided by frame rate and by 8 gives the average frame.',
            sum: `${formatQuantity(entries.megabitsPerSecond, 'Mbps', 5)} ÷ ${rate} ÷ 8 = ${text('frameBytes')}`,
          }
        : {
            words: `One frame, ${LAYOUT_NAMES[layout]}, as its layout prescribes.`,
            sum: `${frameSizeSum(layout, entries.widthPixels, entries.heightPixels)} = ${text('frameBytes')}`,
          },
      {
        words: 'Frames times bytes of one frame gives the pictures.',
        sum: `${text('frames')} × ${text('frameBytes')} = ${text('pictureBytes')}`,
      },
      {
        words:
          'Sample rate times bits times channels times seconds, divided by 8, gives the sound.',
        sum: `${entries.soundRate} × ${entries.soundBits} × ${entries.channels} × ${formatNumber(entries.runningSeconds, 6)} ÷ 8 = ${text('soundBytes')}`,
      },
      { words: 'Both together.', sum: text('totalBytes') },
    ];
  },
  cautions: [
    'Have twice the space free: a file is often written a second time when it is converted.',
  ],
  sources: [
    'arithmetic',
    'multimedia-wiki-v210',
    'videoframe-v210',
    'smpte-st-268',
    'dpx-tag-table',
    'ffmpeg-documentation',
    'iso-iec-30190',
  ],
});
