// The answers of the sound-offset worksheet.
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { framesSeconds, SOUND_SYSTEMS } from '../../../core/file/sound-separation.ts';
import { quantity, words } from '../../machine/answers.ts';
import type { OutcomeOf } from '../../machine/define-worksheet.ts';
import { STATUS_WORDS } from '../../machine/provenance-words.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';
import type { OffsetFindings } from './findings.ts';

const RATES = [
  ['16 2/3', 50 / 3],
  ['18', 18],
  ['24', 24],
  ['25', 25],
] as const;

/** How the sound stands against the picture, in words instead of signs. */
export function offsetWords(lateSeconds: number) {
  return lateSeconds < 0
    ? ({ comes: 'early', move: 'later' } as const)
    : ({ comes: 'late', move: 'earlier' } as const);
}

/** The verdict; only an offset that was found by eye and ear can be called in step. */
export function verdictFor(
  { lateSeconds, timelineFrames }: OffsetFindings,
  wasFound: boolean,
): Outcome['verdict'] {
  if (lateSeconds === 0) {
    return wasFound
      ? { level: 'good', sentence: 'Sound and picture are in step.' }
      : {
          level: 'note',
          sentence:
            'Threaded so, sound and picture should be in step: check it on a start mark or on lips.',
        };
  }
  const seconds = formatQuantity(Math.abs(lateSeconds), 's');
  const frames = formatQuantity(Math.abs(timelineFrames), 'frames');
  const { comes, move } = offsetWords(lateSeconds);
  return {
    level: Math.abs(timelineFrames) < 0.5 ? 'note' : 'care',
    sentence: `The sound comes ${seconds} ${comes}: move it ${frames} ${move}.`,
  };
}

/** Labels, in printed order. */
export const labels = {
  separation: 'Separation',
  separationLength: 'On the film',
  separationSeconds: 'In time',
  frameSeconds: 'One film frame lasts',
  soundComes: 'The sound comes',
  offBySeconds: 'Sound and picture are apart by',
  moveFrames: 'Frames of the timeline to move it',
} as const;

export type AnswerKey = keyof typeof labels;

function comesWords(lateSeconds: number, wasFound: boolean): string {
  if (lateSeconds === 0) return wasFound ? 'with its picture' : 'with its picture, if threaded so';
  const { comes, move } = offsetWords(lateSeconds);
  return `${comes}: move it ${move}`;
}

export function answersOf(
  found: OffsetFindings,
  wasFound: boolean,
): OutcomeOf<AnswerKey>['answers'] {
  const { status, separationFrames, separationMillimetres, separationSeconds } = found;
  const unknown = words('not known for this system');
  return {
    separation:
      separationFrames === undefined
        ? unknown
        : quantity(separationFrames, 'frames', 4, {
            note: status === undefined ? 'as you entered it' : STATUS_WORDS[status],
          }),
    separationLength:
      separationMillimetres === undefined
        ? unknown
        : words(formatQuantity(separationMillimetres, 'mm', 4)),
    separationSeconds:
      separationSeconds === undefined ? unknown : quantity(separationSeconds, 's', 4),
    frameSeconds: quantity(found.frameSeconds, 's'),
    soundComes: words(comesWords(found.lateSeconds, wasFound)),
    offBySeconds: quantity(Math.abs(found.lateSeconds), 's'),
    moveFrames: quantity(Math.abs(found.timelineFrames), 'frames'),
  };
}

/** The separations that are known, in seconds. */
export function systemsTable(): ResultTable {
  return {
    caption: 'How far sound precedes its picture, in seconds at the usual film rates',
    columns: ['System', 'Frames', ...RATES.map(([name]) => name), 'How it is known'],
    rows: SOUND_SYSTEMS.map(({ label, framesAhead, status }) => ({
      cells: [
        label,
        String(framesAhead),
        ...RATES.map(([, rate]) => formatNumber(framesSeconds(framesAhead, rate), 4)),
        STATUS_WORDS[status],
      ],
    })),
  };
}
