// How the copies are described to a customer.
import type { RepeatPattern } from '../../../core/file/repeat-pattern.ts';
import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../../../quantity/format.ts';
import type { ResultTable } from '../../machine/types.ts';
import type { Copies } from './copies.ts';
import type { Values } from './inputs.ts';

/** `11.5 to 22.9 GB`, or one size where both print alike. */
export function rangeText(leastBytes: number, mostBytes: number): string {
  const [least, most] = [formatBytes(leastBytes, 2), formatBytes(mostBytes, 2)];
  return least === most ? least : `${least} to ${most}`;
}

const timesWords = (count: number): string =>
  count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;

export function repeatWords({
  keepsEveryFrame,
  fewestRepeats,
  mostRepeats,
}: RepeatPattern): string {
  if (!keepsEveryFrame) return 'some pictures are left out: movement jumps';
  if (mostRepeats === 1) return 'every picture once: as it was';
  return fewestRepeats === mostRepeats
    ? `every picture ${timesWords(mostRepeats)}: even`
    : `each picture ${timesWords(fewestRepeats)} or ${timesWords(mostRepeats)}: slow pans step a little`;
}

function speedWords(percent: number): string {
  const size = formatNumber(Math.abs(percent), 2);
  if (Math.abs(percent) < 0.05) return 'as it was';
  if (Math.abs(percent) <= 5) return `${size} % too ${percent > 0 ? 'fast' : 'slow'}: hardly seen`;
  return percent > 0
    ? `${size} % too fast: people hurry`
    : `${size} % too slow: people drag their feet`;
}

/** What becomes of the sound when the film is played straight on. */
export function pitchWords(semitones: number | undefined): string {
  if (semitones === undefined) return 'none';
  if (Math.abs(semitones) < 0.005) return 'as it was';
  const size = formatQuantity(Math.abs(semitones), 'semitone', 2);
  return `${size} too ${semitones > 0 ? 'high' : 'low'}, unless it is corrected`;
}

/** The four ways to have a film, side by side. */
export function fourWays(
  { ownSeconds, fastSeconds, keep, watchBytes, fastBytes, ...found }: Copies,
  { nativeFps, deliveryFps }: Values,
): ResultTable {
  const delivery = formatNumber(deliveryFps, 4);
  const own = formatDuration(ownSeconds);
  const ownPitch = found.fastSemitones === undefined ? 'none' : 'as it was';
  return {
    caption: 'Four ways to have your film',
    columns: ['Option', 'Runs', 'Size', 'Movement', 'Sound', 'Good for'],
    rows: [
      {
        cells: [
          `File to keep, ${formatNumber(nativeFps, 4)} pictures a second, nothing lost`,
          own,
          rangeText(keep.leastBytes, keep.mostBytes),
          'every picture once: as it was',
          ownPitch,
          'keeping, and making other copies from, one for an editing program too; not for a television',
        ],
      },
      {
        cells: [
          `File to watch, own speed on a timeline of ${delivery}`,
          own,
          formatBytes(watchBytes),
          repeatWords(found.pattern),
          ownPitch,
          'watching on any screen',
        ],
      },
      {
        cells: [
          `File to watch, played straight on at ${delivery}`,
          formatDuration(fastSeconds),
          formatBytes(fastBytes),
          speedWords(found.fastPercent),
          pitchWords(found.fastSemitones),
          'only an editing program that takes no other rate; its speed has to be set right there',
        ],
      },
      {
        cells: [
          'One to keep and one to watch: the first two',
          own,
          rangeText(keep.leastBytes + watchBytes, keep.mostBytes + watchBytes),
          'each as above',
          ownPitch,
          'most families',
        ],
      },
    ],
  };
}
