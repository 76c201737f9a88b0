import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import type { WorkingStep } from '../../machine/types.ts';
import type { AnswerKey } from './answers.ts';
import type { KeepFindings } from './findings.ts';
import type { KeepEntries } from './inputs.ts';

const shown = (value: number, digits: number): string => formatNumber(value, digits);

function ratioStep({ ends, ratio }: KeepFindings, entries: KeepEntries): WorkingStep {
  if (ends !== undefined) {
    return {
      words:
        'Camera frames from end to end, divided by the steps between film frames, give the camera frames per film frame.',
      sum: `(${shown(ends.last.cameraFrame, 9)} − ${shown(ends.first.cameraFrame, 9)}) ÷ (${entries.filmFrames} − 1) = ${shown(ratio, 6)}`,
    };
  }
  return {
    words: 'Camera rate divided by film rate gives the camera frames per film frame.',
    sum: `${formatQuantity(entries.cameraFps, 'fps', 6)} ÷ ${formatQuantity(entries.filmFps, 'fps', 6)} = ${shown(ratio, 6)}`,
  };
}

/** The steps behind the keep list, with the reader's numbers. */
export function keepWorking(
  found: KeepFindings,
  told: (key: AnswerKey) => string,
  entries: KeepEntries,
): readonly WorkingStep[] {
  const { reel, trust, wanderPercent } = found;
  return [
    ratioStep(found, entries),
    {
      words:
        'Each film frame lies so many camera frames after the one before; between ties the share of the way counts. The nearest camera frame is kept, for the last film frame:',
      sum: `${reel.ties.length} ${reel.ties.length === 1 ? 'tie' : 'ties'}; kept: ${told('lastKept')}`,
    },
    {
      words:
        'The room is half the window P + c − T − R in camera frames, at the fastest that the film may run with this wander.',
      sum: `room ${told('roomCameraFrames')}`,
    },
    {
      words:
        'Midway between two ties G film frames apart a wander w moves a film frame by up to w × G ÷ 2; the farther from a tie, the more, and without a second tie without end.',
      sum: `w = ${formatQuantity(wanderPercent, 'percent', 2)}: out by up to ${shown(trust.worstErrorFrames, 3)} camera frames, ties included`,
    },
    {
      words:
        'A film frame is sure while that error and its rounding to a whole camera frame fit into the room.',
      sum: `${told('sureFilmFrames')} of ${formatNumber(entries.filmFrames)} film frames`,
    },
  ];
}
