import type { RepeatPattern } from '../../../core/file/repeat-pattern.ts';
import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../../../quantity/format.ts';
import { bytes, duration, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { RepeatPatternData } from '../../machine/picture-data.ts';
import type { Outcome } from '../../machine/types.ts';
import { copiesOf, type Copies } from './copies.ts';
import { inputs } from './inputs.ts';
import { fourWays, pitchWords, rangeText, repeatWords } from './words.ts';

/** Pictures of the film that are drawn. */
const SHOWN_PICTURES = 12;

function repeatPicture(pattern: RepeatPattern): RepeatPatternData {
  const repeats = pattern.repeats.slice(0, SHOWN_PICTURES);
  return {
    name: 'repeat-pattern',
    alternative: `How many pictures of the screen each of the first pictures of the film stands for: ${repeats.join(', ')}.`,
    repeats,
  };
}

function verdictFor({ ownSeconds, fastSeconds, fastPercent: percent }: Copies): Outcome['verdict'] {
  const own = formatDuration(ownSeconds);
  return Math.abs(percent) < 0.05
    ? {
        level: 'good',
        sentence: `Your film runs ${own}, and a screen of that rate shows it as it was.`,
      }
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
  inputs,
  model:
    'Pictures from the length by the foot, running time by the rate. The file to keep holds every picture once and loses nothing: pictures × pixels × bits, of which lossless compression leaves 40 to 80 %, from memory and from trials; film grain decides. The file to watch is smaller because it leaves out what the eye hardly sees: running time × data rate. On a timeline with repeats some pictures stand longer, so that the film keeps its own speed. With sound, uncompressed sound is added.',
  answers: {
    ownSeconds: 'Running time at its own speed',
    fastSeconds: 'Running time when played straight on',
    fastPercent: 'That is too fast by',
    movement: 'Movement on a timeline with repeats',
    sound: 'Sound when played straight on',
    keep: 'Size of the file to keep',
    keepMostBytes: 'Room to plan for the file to keep',
    uncompressedBytes: 'The file to keep, uncompressed',
    watchBytes: 'Size of the file to watch',
    both: 'One to keep and one to watch',
    bothMostBytes: 'Room to plan for both',
    frames: 'Pictures on your film',
  },
  find: copiesOf,
  outcome(found, values) {
    const { ownSeconds, fastSeconds, keep, watchBytes, fastPercent, pattern } = found;
    const delivery = formatNumber(values.deliveryFps, 4);
    return {
      verdict: verdictFor(found),
      answers: {
        ownSeconds: duration(ownSeconds),
        fastSeconds: duration(fastSeconds, { note: `At ${delivery} pictures a second.` }),
        fastPercent: quantity(fastPercent, 'percent', 3, {
          note: 'With a minus sign it is too slow.',
        }),
        movement: words(repeatWords(pattern), {
          note: `The timeline has ${delivery} pictures a second.`,
        }),
        sound: words(pitchWords(found.fastSemitones)),
        keep: words(rangeText(keep.leastBytes, keep.mostBytes)),
        keepMostBytes: bytes(keep.mostBytes),
        uncompressedBytes: bytes(keep.uncompressedBytes),
        watchBytes: bytes(watchBytes),
        both: words(rangeText(keep.leastBytes + watchBytes, keep.mostBytes + watchBytes)),
        bothMostBytes: bytes(keep.mostBytes + watchBytes),
        frames: quantity(found.frames, 'frames', 4),
      },
      tables: [fourWays(found, values)],
      pictures: [repeatPicture(pattern)],
    };
  },
  working({ frameBytes, keepSoundBytes, watchRate }, told, values) {
    const native = formatQuantity(values.nativeFps, 'fps', 4);
    const delivery = formatQuantity(values.deliveryFps, 'fps', 4);
    const sound = keepSoundBytes === 0 ? '' : ` + ${formatBytes(keepSoundBytes, 4)}`;
    const andSound = values.sound === 'sound' ? ', with the sound' : '';
    return [
      {
        words: 'The length tells how many pictures there are; the rate tells how long they run.',
        sum: `${told('frames')} ÷ ${native} = ${told('ownSeconds')}`,
      },
      {
        words: 'The same pictures shown one after the other at the rate of the screen.',
        sum: `${told('frames')} ÷ ${delivery} = ${told('fastSeconds')}`,
      },
      {
        words: `File to keep: pictures times bytes of one picture, with nothing left out${andSound}.`,
        sum: `${told('frames')} × ${formatBytes(frameBytes, 4)}${sound} = ${told('uncompressedBytes')}`,
      },
      {
        words: 'Lossless compression leaves 40 to 80 % of the pictures, by the grain.',
        sum: `${told('uncompressedBytes')} → ${told('keep')}`,
      },
      {
        words: `File to watch: data rate${andSound}, times running time, divided by 8 bits in a byte, is the size.`,
        sum: `${formatQuantity(watchRate / 1e6, 'Mbps', 4)} × ${told('ownSeconds')} ÷ 8 = ${told('watchBytes')}`,
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
