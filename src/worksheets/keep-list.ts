import { driftFilmFrames, rateTolerancePercent } from '../core/keep-drift.ts';
import {
  keepListCsv,
  LAST_CAMERA_FRAME,
  MOST_FILM_FRAMES,
  type KeepList,
} from '../core/keep-list.ts';
import { keepCommand } from '../core/picture-commands.ts';
import { formatNumber, formatQuantity } from '../core/quantity/format.ts';
import { durationAnswer, quantityAnswer, wordsAnswer } from './answers.ts';
import {
  cameraFpsInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  readoutSecondsInput,
} from './gate-inputs.ts';
import { findKeepList, type KeepEntries, type KeepFindings } from './keep-list-findings.ts';
import { startOfList } from './keep-list-picture.ts';
import { codeRangeInput, PICTURE_TURNS, pictureTurnInput } from './recording-inputs.ts';
import { defineWorksheet, type Outcome, type ResultFile } from './types.ts';

function verdictFor(found: KeepFindings, { filmFrames }: KeepEntries): Outcome['verdict'] {
  if (found.rule === undefined) {
    return {
      level: 'stop',
      sentence:
        'The camera is slower than the film, so some film frames have no camera frame of their own: raise the camera rate or slow the film.',
    };
  }
  if (found.wholeRoomFrames < -1e-9) {
    return {
      level: 'stop',
      sentence:
        'At these settings even a perfect list meets blended frames: raise the camera rate or shorten exposure or readout.',
    };
  }
  if (found.roomFrames < -1e-9) {
    return {
      level: 'care',
      sentence: `Every film frame gets its own camera frame, but whole ones are sure only if the start is right to ${formatNumber(found.wholeRoomFrames, 2)} camera frames: check the picked film, and move the start by a tenth or two if a frame is blended.`,
    };
  }
  if (found.isTied) {
    return {
      level: 'care',
      sentence: `All ${formatNumber(filmFrames)} film frames have their camera frame, tied at both ends; this holds if the film ran at one speed in between.`,
    };
  }
  if (found.sureFrames >= filmFrames) {
    return {
      level: 'good',
      sentence: `Every one of the ${formatNumber(filmFrames)} film frames has a whole camera frame of its own.`,
    };
  }
  return {
    level: 'care',
    sentence: `The list is sure for the first ${formatNumber(found.sureFrames)} of ${formatNumber(filmFrames)} film frames only: tie it to the last film frame too, or make a new list for each stretch.`,
  };
}

function spacingWords({ ratio }: KeepFindings): string {
  const fewest = ratio.floor().valueOf();
  const most = ratio.ceil().valueOf();
  if (fewest === most) return fewest === 1 ? 'each one' : `one of every ${fewest}`;
  return `${fewest} or ${most} apart`;
}

/** The keep list as a file. Its text is only made when it is taken away: a long reel has many lines. */
class KeepListFile implements ResultFile {
  readonly fileName = 'keep-list.csv';
  readonly mediaType = 'text/csv';
  readonly #list: KeepList;
  readonly #cameraFps: number;

  constructor(list: KeepList, cameraFps: number) {
    this.#list = list;
    this.#cameraFps = cameraFps;
  }

  get text(): string {
    return keepListCsv(this.#list, this.#cameraFps);
  }
}

export const worksheet = defineWorksheet({
  id: 'keep-list',
  title: 'Keep list',
  question: 'Which camera frame stands for each film frame, and how far does the list hold?',
  chapter: 'file/whole-frames',
  inputs: {
    filmFps: {
      ...filmFpsInput,
      label: 'Film rate while recording',
      help: 'As measured while the recording was made.',
    },
    cameraFps: { ...cameraFpsInput, default: '50' },
    nativeFps: {
      kind: 'quantity',
      label: 'Native rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      accepted: '18, 16 or 24',
      help: 'Rate at which the film was shot; the film file is stamped with it.',
      bench: 'reel.nativeFps',
    },
    filmFrames: {
      kind: 'count',
      unit: 'frames',
      label: 'Film frames wanted',
      minimum: 1,
      maximum: MOST_FILM_FRAMES,
      default: '3600',
      accepted: '3600',
      help: 'From the first film frame to the last, both counted. 50 ft of Super 8 hold 3600.',
    },
    firstCameraFrame: {
      kind: 'quantity',
      label: 'Camera frame of the first film frame',
      unit: 'frames',
      minimum: 0,
      maximum: LAST_CAMERA_FRAME,
      default: '126',
      accepted: '126, 126 1/2 or 126.3',
      help: 'Step through the recording, counting from 0. The middle one of the camera frames that show the first film frame clean; 126 1/2 when 126 and 127 are clean. Tenths are for moving the start by trial.',
    },
    lastCameraFrame: {
      kind: 'optional-quantity',
      label: 'Camera frame of the last film frame',
      unit: 'frames',
      minimum: 0,
      maximum: LAST_CAMERA_FRAME,
      default: '',
      accepted: '10123 or 10123 1/2',
      help: 'The same for the last film frame, if you know its number. Ties the list at both ends. Leave it empty to trust the rates.',
    },
    rateErrorPercent: {
      kind: 'quantity',
      label: 'The film rate may be out by',
      unit: 'percent',
      minimum: 0,
      maximum: 10,
      default: '0.1',
      accepted: '0.1 %',
      help: 'Either way; what your measurement leaves unsure, and what the projector drifts. 0 only where one clock drives projector and camera.',
    },
    exposureSeconds: { ...exposureSecondsInput, default: '1/54' },
    readoutSeconds: readoutSecondsInput,
    flashesPerFrame: flashesPerFrameInput,
    openPercent: openPercentInput,
    turn: pictureTurnInput,
    codeRange: codeRangeInput,
  },
  model:
    'Projector and camera each run at one constant rate; the first film frame lies in the middle of the camera frames you name. Then the nearest camera frame is picked for each film frame, in exact fractions. Real projectors wander, so the list is sure only as long as the drift stays within the room that whole frames leave. How well the start is known follows from the number of clean camera frames; a start in other tenths counts as found by trial. Equal blades with hard edges are assumed. In the file camera frames and film frames are both counted from 0; the table counts film frames from 1.',
  compute(entries, exact) {
    const found = findKeepList(entries, exact.filmFps, exact.cameraFps);
    const { filmFrames, rateErrorPercent, cameraFps, nativeFps } = entries;
    const { list, rule, firstKept, lastKept, ratio } = found;
    // Exposures over several film frames hold no whole frame anywhere; there is nothing to list.
    const isShort = (entries.exposureSeconds + entries.readoutSeconds) * entries.filmFps < 3;
    const start = isShort ? startOfList(entries, found) : undefined;
    const tolerance = rateTolerancePercent(found.roomFrames, ratio.valueOf(), filmFrames);
    const drift = found.isTied ? 0 : driftFilmFrames(filmFrames, rateErrorPercent);
    return {
      verdict: verdictFor(found, entries),
      answers: {
        cameraFramesPerFilmFrame: quantityAnswer(
          'Camera frames per film frame',
          ratio.valueOf(),
          'one',
          6,
        ),
        spacing: wordsAnswer('Kept frames are', spacingWords(found)),
        lastKept: quantityAnswer('Camera frame kept for the last film frame', lastKept, 'one', 9),
        droppedFrames: quantityAnswer(
          'Camera frames dropped between first and last',
          Math.max(0, lastKept - firstKept + 1 - filmFrames),
          'one',
          9,
        ),
        nativeSeconds: durationAnswer('Running time at the native rate', filmFrames / nativeFps),
        startErrorFrames: quantityAnswer(
          'The start may be off by',
          found.startErrorFrames,
          'frames',
          2,
          { note: 'Camera frames either way; follows from the count of clean ones.' },
        ),
        roomCameraFrames: quantityAnswer(
          'Room left for drift',
          Math.max(0, found.roomFrames),
          'frames',
          2,
          { note: 'Camera frames that a film frame may lie away from where the list puts it.' },
        ),
        driftFilmFrames: quantityAnswer('Drift at the last film frame', drift, 'one', 3, {
          note: found.isTied
            ? 'None: the list is tied at both ends.'
            : 'In film frames, either way: so many are missing or doubled at the end.',
        }),
        sureFilmFrames: quantityAnswer('Film frames that are sure', found.sureFrames, 'one', 9),
        rateTolerancePercent: quantityAnswer(
          'Error of the film rate that the whole list bears',
          tolerance,
          'percent',
          2,
        ),
        ...(found.isTied
          ? { listFps: quantityAnswer('Film rate between the ends', found.listFps, 'fps', 6) }
          : {}),
      },
      ...(found.isTied && Math.abs(found.listFps / entries.filmFps - 1) > 0.05
        ? {
            cautions: [
              'The film rate from the two ends and the one you typed differ by more than 5 %: check the frame numbers and the count.',
            ],
          }
        : {}),
      ...(rule === undefined
        ? {}
        : {
            commands: [
              {
                label: 'Pick the kept frames, turn them and stamp them at the native rate',
                text: keepCommand(rule, exact.nativeFps, {
                  turn: PICTURE_TURNS[entries.turn],
                  codeRange: entries.codeRange,
                }),
              },
            ],
          }),
      ...(start === undefined ? {} : { tables: [start.table], pictures: [start.picture] }),
      files: [new KeepListFile(list, cameraFps)],
    };
  },
  working(entries, { answers }, exact) {
    const { ratio, list } = findKeepList(entries, exact.filmFps, exact.cameraFps);
    const { firstCameraFrame, lastCameraFrame, filmFrames } = entries;
    const first = formatNumber(firstCameraFrame, 9);
    const last = filmFrames - 1;
    const middle = ratio.mul(last).valueOf() + firstCameraFrame;
    return [
      lastCameraFrame === undefined
        ? {
            words: 'Camera rate divided by film rate gives the camera frames per film frame.',
            sum: `${formatQuantity(entries.cameraFps, 'fps', 6)} ÷ ${formatQuantity(entries.filmFps, 'fps', 6)} = ${list.top}/${list.bottom} = ${formatNumber(ratio.valueOf(), 6)}`,
          }
        : {
            words:
              'Camera frames from end to end, divided by the steps between film frames, give the camera frames per film frame.',
            sum: `(${formatNumber(lastCameraFrame, 9)} − ${first}) ÷ (${filmFrames} − 1) = ${formatNumber(ratio.valueOf(), 6)}`,
          },
      {
        words:
          'Each film frame lies so many camera frames after the one before; the nearest camera frame is kept. For the last film frame:',
        sum: `${first} + ${last} × ${list.top}/${list.bottom} = ${formatNumber(middle, 9)}, kept: ${answers['lastKept']?.text ?? ''}`,
      },
      {
        words:
          'The drift is the number of film frames times the error of the film rate; the list is sure while the drift, in camera frames, stays within the room.',
        sum: `drift ${answers['driftFilmFrames']?.text ?? ''} film frames; room ${answers['roomCameraFrames']?.text ?? ''} of the camera`,
      },
    ];
  },
  cautions: [
    'Keep the recording until the picked film has been checked: first and last frame, a cut and a fast movement in between.',
    'A camera that drops frames while recording shifts every frame after it; check the frame count of the recording against its length.',
  ],
  sources: ['arithmetic', 'common-practice', 'ffmpeg-documentation'],
});
