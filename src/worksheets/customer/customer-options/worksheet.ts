import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../../../quantity/format.ts';
import { framesOnLength, runningSeconds } from '../../../core/reel/film-length.ts';
import { bitRateBytes, soundBitsPerSecond } from '../../../core/file/file-size.ts';
import { tightFrameBits } from '../../../core/file/frame-bytes.ts';
import { GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import { keepSize } from '../../../core/file/keep-size.ts';
import { repeatPattern, type RepeatPattern } from '../../../core/file/repeat-pattern.ts';
import { pitchSemitones } from '../../../core/file/sound-retiming.ts';
import { speedChangePercent } from '../../../core/file/speed-change.ts';
import {
  bytesAnswer,
  durationAnswer,
  quantityAnswer,
  wordsAnswer,
} from '../../machine/labelled-answers.ts';
import type { RepeatPatternData } from '../../machine/picture-data.ts';
import { defineWorksheet, type Outcome, type ResultTable } from '../../machine/types.ts';

/** Sound of the file to watch, uncompressed: two channels of 16 bit at 48 kHz. */
const WATCH_SOUND = soundBitsPerSecond(48_000, 16, 2);

/** Sound of the file to keep, uncompressed: two channels of 24 bit at 48 kHz. */
const KEEP_SOUND = soundBitsPerSecond(48_000, 24, 2);

const KEEP_SAMPLES = {
  '10': { label: '10 bit, colour at half width (4:2:2)', bitDepth: 10, sampling: '4:2:2' },
  '8': { label: '8 bit, colour at half width and height (4:2:0)', bitDepth: 8, sampling: '4:2:0' },
  '16': { label: '16 bit, red, green and blue in full', bitDepth: 16, sampling: '4:4:4' },
} as const;

/** Pictures of the film that are drawn. */
const SHOWN_PICTURES = 12;

interface Entries {
  readonly gauge: GaugeId;
  readonly lengthMetres: number;
  readonly nativeFps: number;
  readonly deliveryFps: number;
  readonly sound: 'silent' | 'sound';
  readonly keepWidth: number;
  readonly keepHeight: number;
  readonly keepSamples: keyof typeof KEEP_SAMPLES;
  readonly megabitsPerSecond: number;
}

function optionsOf(entries: Entries) {
  const { gauge, lengthMetres, nativeFps, deliveryFps, megabitsPerSecond } = entries;
  const isSilent = entries.sound === 'silent';
  const frames = framesOnLength(lengthMetres * 1000, gauge, 'frames-per-foot');
  const ownSeconds = runningSeconds(frames, nativeFps);
  const fastSeconds = runningSeconds(frames, deliveryFps);
  const watchRate = megabitsPerSecond * 1e6 + (isSilent ? 0 : WATCH_SOUND);
  const { bitDepth, sampling } = KEEP_SAMPLES[entries.keepSamples];
  const frame = {
    widthPixels: entries.keepWidth,
    heightPixels: entries.keepHeight,
    bitDepth,
    sampling,
  };
  return {
    frames,
    ownSeconds,
    fastSeconds,
    keep: keepSize(frames, frame, ownSeconds, isSilent ? 0 : KEEP_SOUND),
    frameBytes: tightFrameBits(frame.widthPixels, frame.heightPixels, bitDepth, sampling) / 8,
    watchBytes: bitRateBytes(ownSeconds, watchRate),
    fastBytes: bitRateBytes(fastSeconds, watchRate),
    fastPercent: speedChangePercent(nativeFps, deliveryFps),
  };
}

/** `11.5 to 22.9 GB`, or one size where both print alike. */
function rangeText(leastBytes: number, mostBytes: number): string {
  const [least, most] = [formatBytes(leastBytes, 2), formatBytes(mostBytes, 2)];
  return least === most ? least : `${least} to ${most}`;
}

const timesWords = (count: number): string =>
  count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;

function repeatWords({ keepsEveryFrame, fewestRepeats, mostRepeats }: RepeatPattern): string {
  if (!keepsEveryFrame) return 'some pictures are left out: movement jumps';
  if (mostRepeats === 1) return 'every picture once: as it was';
  return fewestRepeats === mostRepeats
    ? `every picture ${timesWords(mostRepeats)}: even`
    : `each picture ${timesWords(fewestRepeats)} or ${timesWords(mostRepeats)}: slow pans step a little`;
}

function repeatPicture(pattern: RepeatPattern): RepeatPatternData {
  const repeats = pattern.repeats.slice(0, SHOWN_PICTURES);
  return {
    name: 'repeat-pattern',
    alternative: `The first pictures of the film stand for ${repeats.join(', ')} pictures of the screen.`,
    repeats,
  };
}

function speedWords(percent: number): string {
  const size = formatNumber(Math.abs(percent), 2);
  if (Math.abs(percent) < 0.05) return 'as it was';
  if (Math.abs(percent) <= 5) return `${size} % too ${percent > 0 ? 'fast' : 'slow'}: hardly seen`;
  return percent > 0
    ? `${size} % too fast: people hurry`
    : `${size} % too slow: people drag their feet`;
}

function pitchWords(nativeFps: number, deliveryFps: number): string {
  const semitones = pitchSemitones(deliveryFps / nativeFps);
  if (Math.abs(semitones) < 0.005) return 'as it was';
  const size = formatQuantity(Math.abs(semitones), 'semitone', 2);
  return `${size} too ${semitones > 0 ? 'high' : 'low'}, unless it is corrected`;
}

function verdictFor(ownSeconds: number, fastSeconds: number, percent: number): Outcome['verdict'] {
  const own = formatDuration(ownSeconds);
  return Math.abs(percent) < 0.05
    ? { level: 'good', sentence: `Your film runs ${own}, and every screen can show it as it was.` }
    : {
        level: 'note',
        sentence: `At its own speed your film runs ${own}; played straight on at the rate of the screen it would be over in ${formatDuration(fastSeconds)}, ${formatNumber(Math.abs(percent), 2)} % too ${percent > 0 ? 'fast' : 'slow'}.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'customer-options',
  title: 'Copies you can have of your film',
  question: 'Which copies can I have of my film, and what is each like?',
  chapter: 'customer/options',
  inputs: {
    gauge: {
      kind: 'choice',
      label: 'Kind of film',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'We tell it from the film itself; the box may be wrong.',
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
      kind: 'quantity',
      label: 'Pictures in a second, as it was filmed',
      unit: 'fps',
      minimum: 4,
      maximum: 60,
      default: '18',
      accepted: '18, 16 or 24',
      help: 'Standard 8 usually 16, Super 8 usually 18, with sound 18 or 24; 16 mm sound film 24.',
      bench: 'reel.nativeFps',
    },
    deliveryFps: {
      kind: 'quantity',
      label: 'Pictures in a second of your television',
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
  },
  model:
    'Pictures from the length by the foot, running time by the rate. The file to keep holds every picture once and loses nothing: pictures × pixels × bits, of which lossless compression leaves 40 to 80 %, from memory and from trials; film grain decides. The file to watch is smaller because it leaves out what the eye hardly sees: running time × data rate. On a timeline with repeats some pictures stand longer, so that the film keeps its own speed. With sound, uncompressed sound is added.',
  compute(entries, { nativeFps, deliveryFps }) {
    const { frames, ownSeconds, fastSeconds, keep, watchBytes, fastBytes, fastPercent } =
      optionsOf(entries);
    const keepText = rangeText(keep.leastBytes, keep.mostBytes);
    const bothText = rangeText(keep.leastBytes + watchBytes, keep.mostBytes + watchBytes);
    const pattern = repeatPattern(nativeFps, deliveryFps);
    const repeats = repeatWords(pattern);
    const isSilent = entries.sound === 'silent';
    const ownPitch = isSilent ? 'none' : 'as it was';
    const fastPitch = isSilent ? 'none' : pitchWords(entries.nativeFps, entries.deliveryFps);
    const native = formatNumber(entries.nativeFps, 4);
    const delivery = formatNumber(entries.deliveryFps, 4);
    const own = formatDuration(ownSeconds);
    const table: ResultTable = {
      caption: 'Four ways to have your film',
      columns: ['Option', 'Runs', 'Size', 'Movement', 'Sound', 'Good for'],
      rows: [
        {
          cells: [
            `File to keep, ${native} pictures a second, nothing lost`,
            own,
            keepText,
            'every picture once: as it was',
            ownPitch,
            'keeping, and making other copies from; not for a television',
          ],
        },
        {
          cells: [
            `File to watch, own speed on a timeline of ${delivery}`,
            own,
            formatBytes(watchBytes),
            repeats,
            ownPitch,
            'watching on any screen',
          ],
        },
        {
          cells: [
            `File to watch, played straight on at ${delivery}`,
            formatDuration(fastSeconds),
            formatBytes(fastBytes),
            speedWords(fastPercent),
            fastPitch,
            'editing by those who set the speed themselves',
          ],
        },
        {
          cells: [
            'One to keep and one to watch: the first two',
            own,
            bothText,
            'each as above',
            ownPitch,
            'most families',
          ],
        },
      ],
    };
    return {
      verdict: verdictFor(ownSeconds, fastSeconds, fastPercent),
      answers: {
        ownSeconds: durationAnswer('Running time at its own speed', ownSeconds),
        fastSeconds: durationAnswer(`Running time straight on at ${delivery}`, fastSeconds),
        fastPercent: quantityAnswer('That is too fast by', fastPercent, 'percent', 3, {
          note: 'With a minus sign it is too slow.',
        }),
        movement: wordsAnswer(`Movement on a timeline of ${delivery}`, repeats),
        sound: wordsAnswer('Sound when played straight on', fastPitch),
        keep: wordsAnswer('Size of the file to keep', keepText),
        keepMostBytes: bytesAnswer('Plan for the file to keep', keep.mostBytes),
        uncompressedBytes: bytesAnswer('The same uncompressed', keep.uncompressedBytes),
        watchBytes: bytesAnswer('Size of the file to watch', watchBytes),
        both: wordsAnswer('One to keep and one to watch', bothText),
        bothMostBytes: bytesAnswer('Plan for both', keep.mostBytes + watchBytes),
        frames: quantityAnswer('Pictures on your film', frames, 'frames', 4),
      },
      tables: [table],
      pictures: [repeatPicture(pattern)],
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const native = formatQuantity(entries.nativeFps, 'fps', 4);
    const delivery = formatQuantity(entries.deliveryFps, 'fps', 4);
    const { frameBytes } = optionsOf(entries);
    const withSound = entries.sound === 'sound' ? ' and sound' : '';
    return [
      {
        words: 'The length tells how many pictures there are; the rate tells how long they run.',
        sum: `${text('frames')} ÷ ${native} = ${text('ownSeconds')}`,
      },
      {
        words: 'The same pictures shown one after the other at the rate of the screen.',
        sum: `${text('frames')} ÷ ${delivery} = ${text('fastSeconds')}`,
      },
      {
        words: 'File to keep: pictures times bytes of one picture, with nothing left out.',
        sum: `${text('frames')} × ${formatBytes(frameBytes, 4)}${withSound} = ${text('uncompressedBytes')}`,
      },
      {
        words: 'Lossless compression leaves 40 to 80 % of the pictures, by the grain.',
        sum: `${text('uncompressedBytes')} → ${text('keep')}`,
      },
      {
        words:
          'File to watch: running time times data rate, divided by 8 bits in a byte, is the size.',
        sum: `${formatNumber(entries.megabitsPerSecond)} Mbit/s${withSound} × ${text('ownSeconds')} ÷ 8 = ${text('watchBytes')}`,
      },
    ];
  },
  cautions: [
    'Ask for your film back and keep it cool and dry: it is the original, the file is a copy.',
    'Keep three sets of the files in two places, one of them in another house.',
  ],
  sources: [
    'arithmetic',
    'common-practice',
    'from-memory',
    'de-encyclopaedia-filmschritt',
    'nypl-ami-film-2020',
  ],
});
