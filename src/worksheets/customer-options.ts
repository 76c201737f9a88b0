import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../core/quantity/format.ts';
import { framesOnLength, runningSeconds } from '../core/film-length.ts';
import { bitRateBytes, soundBitsPerSecond } from '../core/file-size.ts';
import { GAUGE_NAMES } from '../core/gauges.ts';
import type { GaugeId } from '../core/gauges/gauge.ts';
import { repeatPattern, type RepeatPattern } from '../core/repeat-pattern.ts';
import { pitchSemitones } from '../core/sound-retiming.ts';
import { speedChangePercent } from '../core/speed-change.ts';
import { bytesAnswer, durationAnswer, quantityAnswer, wordsAnswer } from './answers.ts';
import type { RepeatPatternData } from './picture-data.ts';
import { defineWorksheet, type Outcome, type ResultTable } from './types.ts';

/** Sound of an ordinary video file, uncompressed: two channels of 16 bit at 48 kHz. */
const SOUND_BITS_PER_SECOND = soundBitsPerSecond(48_000, 16, 2);

/** Pictures of the film that are drawn. */
const SHOWN_PICTURES = 12;

interface Entries {
  readonly gauge: GaugeId;
  readonly lengthMetres: number;
  readonly nativeFps: number;
  readonly deliveryFps: number;
  readonly sound: 'silent' | 'sound';
  readonly megabitsPerSecond: number;
}

function optionsOf(entries: Entries) {
  const { gauge, lengthMetres, nativeFps, deliveryFps, sound, megabitsPerSecond } = entries;
  const frames = framesOnLength(lengthMetres * 1000, gauge, 'frames-per-foot');
  const ownSeconds = runningSeconds(frames, nativeFps);
  const fastSeconds = runningSeconds(frames, deliveryFps);
  const rate = megabitsPerSecond * 1e6 + (sound === 'sound' ? SOUND_BITS_PER_SECOND : 0);
  return {
    frames,
    ownSeconds,
    fastSeconds,
    ownBytes: bitRateBytes(ownSeconds, rate),
    fastBytes: bitRateBytes(fastSeconds, rate),
    fastPercent: speedChangePercent(nativeFps, deliveryFps),
  };
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
  return percent > 0 ? `${size} % too fast: people hurry` : `${size} % too slow: people wade`;
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
  title: 'What you can have of your film',
  question: 'Which kinds of file can I have of my reel, and what is each like?',
  chapter: 'customer/options',
  inputs: {
    gauge: {
      kind: 'choice',
      label: 'Kind of film',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'It is written on the box, or we look.',
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
      help: 'Old 8 mm film usually 16, silent Super 8 18, sound film 24.',
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
    megabitsPerSecond: {
      kind: 'quantity',
      label: 'Data rate of the file',
      unit: 'Mbps',
      minimum: 0.1,
      maximum: 10_000,
      default: '20',
      accepted: '20 or 50 Mbit/s',
      help: 'The workshop knows: 10 to 30 for watching, more for keeping and editing.',
    },
  },
  model:
    'Frames from the length by the foot, running time by the rate, size by the data rate. A timeline with repeats shows the film at its own speed by letting some pictures stand longer. Sizes are those of a file with the stated average rate; with sound, ordinary uncompressed sound is added.',
  compute(entries, { nativeFps, deliveryFps }) {
    const { frames, ownSeconds, fastSeconds, ownBytes, fastBytes, fastPercent } =
      optionsOf(entries);
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
            `Own-speed file, ${native} pictures a second`,
            own,
            formatBytes(ownBytes),
            'every picture once: as it was',
            ownPitch,
            'keeping; computers play it, some televisions do not',
          ],
        },
        {
          cells: [
            `Own speed on a timeline of ${delivery}`,
            own,
            formatBytes(ownBytes),
            repeats,
            ownPitch,
            'watching on any screen',
          ],
        },
        {
          cells: [
            `Played straight on at ${delivery}`,
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
            formatBytes(2 * ownBytes),
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
        ownBytes: bytesAnswer('Size of a file at its own speed', ownBytes),
        keepAndWatchBytes: bytesAnswer('One to keep and one to watch', 2 * ownBytes),
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
        words: 'Running time times data rate, divided by 8 bits in a byte, is the size.',
        sum: `${formatNumber(entries.megabitsPerSecond)} Mbit/s${entries.sound === 'sound' ? ' and sound' : ''} × ${text('ownSeconds')} ÷ 8 = ${text('ownBytes')}`,
      },
    ];
  },
  cautions: [
    'Ask for your film back and keep it cool and dry: it is the original, the file is a copy.',
    'Keep two copies of the file in two places.',
  ],
  sources: ['arithmetic', 'common-practice', 'de-encyclopaedia-filmschritt'],
});
