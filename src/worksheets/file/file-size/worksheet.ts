import { FRAME_LAYOUTS } from '../../../core/file/frame-bytes.ts';
import {
  binaryGigabytes,
  bitRateBytes,
  frameBitsPerSecond,
  framesInTime,
  soundBitsPerSecond,
} from '../../../core/file/file-size.ts';
import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../../../quantity/format.ts';
import { bytes, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { frameSizeSum } from '../frame-size-sum.ts';
import { inputs, LAYOUT_NAMES } from './inputs.ts';

export const worksheet = defineWorksheet({
  id: 'file-size',
  title: 'File size',
  question: 'How large will this file be?',
  chapter: 'file/files',
  inputs,
  model:
    'Uncompressed: bytes of one frame as its layout prescribes, times frames. v210 fills every line up to 128 bytes; a DPX frame spends four bytes on a pixel and brings its header of 2048 bytes. Sound: rate × bits × channels. GB are decimal, as on discs and drives. The wrapper of a video file adds a little, seldom above 1 %.',
  answers: {
    totalBytes: 'Whole file',
    binaryGigabytes: 'As many computers count it',
    frames: 'Frames',
    frameBytes: 'One frame',
    pictureRate: 'Rate of the pictures',
    pictureBytes: 'Pictures',
    soundBytes: 'Sound',
    bytesPerHour: 'One hour of it',
  },
  find(entries) {
    const { layout, fileFps, runningSeconds } = entries;
    const frames = framesInTime(runningSeconds, fileFps);
    const frameBytes =
      layout === 'bit-rate'
        ? bitRateBytes(1 / fileFps, entries.megabitsPerSecond * 1e6)
        : FRAME_LAYOUTS[layout].frameBytes(entries.widthPixels, entries.heightPixels);
    const pictureBytes = frameBytes * frames;
    const pictureBitsPerSecond = frameBitsPerSecond(frameBytes, fileFps);
    const soundRate = soundBitsPerSecond(
      Number(entries.soundRate),
      Number(entries.soundBits),
      entries.channels,
    );
    const soundBytes = bitRateBytes(runningSeconds, soundRate);
    const totalBytes = pictureBytes + soundBytes;
    return {
      frames,
      frameBytes,
      pictureBytes,
      pictureBitsPerSecond,
      soundBytes,
      totalBytes,
      totalGibibytes: binaryGigabytes(totalBytes),
      bytesPerHour: bitRateBytes(3600, pictureBitsPerSecond + soundRate),
    };
  },
  outcome(found, { layout, runningSeconds }) {
    return {
      verdict: {
        level: 'note',
        sentence: `${formatDuration(runningSeconds)} takes ${formatBytes(found.totalBytes)}.`,
      },
      answers: {
        totalBytes: bytes(found.totalBytes),
        binaryGigabytes: words(`${formatNumber(found.totalGibibytes)} GiB`),
        frames: quantity(found.frames, 'frames'),
        frameBytes: bytes(found.frameBytes, {
          note: layout === 'bit-rate' ? 'on average' : 'exactly',
        }),
        pictureRate: quantity(found.pictureBitsPerSecond / 1e6, 'Mbps', 4),
        pictureBytes: bytes(found.pictureBytes),
        soundBytes: bytes(found.soundBytes),
        bytesPerHour: bytes(found.bytesPerHour),
      },
    };
  },
  working(_, told, entries) {
    const { layout, fileFps } = entries;
    const rate = formatQuantity(fileFps, 'fps', 6);
    return [
      {
        words: 'Running time times frame rate gives the frames.',
        sum: `${formatDuration(entries.runningSeconds)} × ${rate} → ${told('frames')}`,
      },
      layout === 'bit-rate'
        ? {
            words: 'Bit rate divided by frame rate and by 8 gives the average frame.',
            sum: `${formatQuantity(entries.megabitsPerSecond, 'Mbps', 5)} ÷ ${rate} ÷ 8 = ${told('frameBytes')}`,
          }
        : {
            words: `One frame, ${LAYOUT_NAMES[layout]}, as its layout prescribes.`,
            sum: `${frameSizeSum(layout, entries.widthPixels, entries.heightPixels)} = ${told('frameBytes')}`,
          },
      {
        words: 'Frames times bytes of one frame gives the pictures.',
        sum: `${told('frames')} × ${told('frameBytes')} = ${told('pictureBytes')}`,
      },
      {
        words:
          'Sample rate times bits times channels times seconds, divided by 8, gives the sound.',
        sum: `${entries.soundRate} × ${entries.soundBits} × ${entries.channels} × ${formatNumber(entries.runningSeconds, 6)} ÷ 8 = ${told('soundBytes')}`,
      },
      {
        words: 'Both together.',
        sum: `${told('pictureBytes')} + ${told('soundBytes')} = ${told('totalBytes')}`,
      },
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
