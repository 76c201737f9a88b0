import { formatQuantity } from '../../../quantity/format.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { labelledSoundCommands } from '../labelled-sound-commands.ts';
import { soundStripPicture } from '../sound-strip-picture.ts';
import { answersOf, labels, offsetWords, systemsTable, verdictFor } from './answers.ts';
import { findOffset } from './findings.ts';
import { inputs } from './inputs.ts';

/** Longest offset in film frames that the picture of the strip shows. */
const LONGEST_DRAWN_FRAMES = 200;

export const worksheet = defineWorksheet({
  id: 'sound-offset',
  title: 'Sound offset',
  question: 'How far apart are sound and picture, and which way do I move the sound?',
  chapter: 'file/sound',
  inputs,
  model:
    'On every system the sound lies ahead of its picture, because the sound head comes after the gate. If the path from gate to head is some frames too long, the sound is late by as many. Exact; shrunken film keeps its frames and so its timing.',
  answers: labels,
  find: findOffset,
  outcome(found, { taken, filmFps }) {
    const { separationFrames, lateFrames, lateSeconds, commands } = found;
    const wasFound = taken === 'found';
    const { move } = offsetWords(lateSeconds);
    return {
      verdict: verdictFor(found, wasFound),
      answers: answersOf(found, wasFound),
      commands: labelledSoundCommands(`Move the sound ${move}`, commands),
      tables: [systemsTable()],
      // An offset of many seconds, as of a separate recorder, has no place on the strip.
      pictures:
        separationFrames === undefined || Math.abs(lateFrames) > LONGEST_DRAWN_FRAMES
          ? []
          : [soundStripPicture(separationFrames, lateFrames, filmFps, taken === 'beside-frame')],
    };
  },
  working({ lateFrames }, told, { taken, filmFps, deliveryFps, foundFrames }) {
    const rate = formatQuantity(filmFps, 'fps', 5);
    const timeline = formatQuantity(deliveryFps, 'fps', 5);
    if (taken === 'found') {
      return [
        {
          words: 'Frames of the timeline divided by its rate: the time to move the sound by.',
          sum: `${formatQuantity(foundFrames, 'frames')} ÷ ${timeline} = ${told('offBySeconds')}`,
        },
      ];
    }
    return [
      {
        words: 'Separation in frames divided by the film rate is the separation in time.',
        sum: `${told('separation')} ÷ ${rate} = ${told('separationSeconds')}`,
      },
      {
        words:
          taken === 'beside-frame'
            ? 'The track beside the frame belongs to a picture that comes later: the sound is early by the whole separation.'
            : 'The threading makes up for the separation. Each frame by which the lower loop is too long makes the sound a frame late, each frame too short makes it a frame early.',
        sum: `${formatQuantity(Math.abs(lateFrames), 'frames')} ÷ ${rate} = ${told('offBySeconds')}`,
      },
      {
        words: 'Times the rate of the timeline: the frames to move it.',
        sum: `${told('offBySeconds')} × ${timeline} = ${told('moveFrames')}`,
      },
    ];
  },
  cautions: [
    'Trust a start mark, a clap in the film or lips before any table: loops and separations differ in practice.',
    'No clap in front of the gate: it is hot, bright and full of moving parts. Mark the start on the leader.',
    'Thread and set loops with the machine stopped. Claw, sprockets and rollers trap fingers.',
  ],
  sources: [
    'smpte-41',
    'film-cutting-book',
    'hobby-sound-article',
    'dilettantes-dictionary',
    'from-memory',
    'common-practice',
    'ffmpeg-documentation',
    'sox-manual',
  ],
});
